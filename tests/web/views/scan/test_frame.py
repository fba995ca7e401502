from __future__ import annotations

from service.web.views.scan.frame import policy_for, read_style


def test_the_page_allows_its_own_style_and_nothing_else() -> None:
    """No script, no picture, no other host: the policy names the digest of one style."""
    policy = policy_for("p{}")
    assert "default-src 'none'" in policy
    assert "sha256-" in policy
    assert policy != policy_for("q{}")


def test_the_style_loads_nothing() -> None:
    """It has the colours of all pages, but no font and no picture."""
    assert "--accent:" in read_style()
    assert "url(" not in read_style()
