from __future__ import annotations

import pytest
from jinja2 import UndefinedError

from service.web.views.templates import policy_for, show_view


def test_a_page_allows_its_own_style_and_nothing_else() -> None:
    """No script, no picture, no other host: the policy names the digest of one style."""
    policy = policy_for("p{}")
    assert "default-src 'none'" in policy
    assert "sha256-" in policy
    assert policy != policy_for("q{}")


def test_a_value_that_is_missing_is_an_error() -> None:
    """A template never prints a hole."""
    with pytest.raises(UndefinedError):
        show_view("scan.html", {})
