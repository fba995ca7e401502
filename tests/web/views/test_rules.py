from __future__ import annotations

from html import unescape

import pytest

from service.handling.every_rule import list_rules
from service.web.app import make_app
from service.web.press import Presses
from tests.web.sent import running_app
from tests.web.views.opened import show


@pytest.mark.slow
def test_page_and_twin_list_every_rule() -> None:
    """Each rule stands on both with its sentence and source; there is a table of contents."""
    with running_app(make_app(Presses([], patience_seconds=0), "127.0.0.1")) as client:
        page, twin = show(client, "/rules"), client.get("/api/rules").json()
    text = unescape(page)
    assert 'href="#group-1"' in text
    told = [rule for group in twin["groups"] for rule in group["rules"]]
    assert [rule["code"] for rule in told] == [rule.code for rule in list_rules()]
    for rule in list_rules():
        assert rule.says in text
        assert f'id="{rule.code}"' in text
        assert rule.source in text
