from __future__ import annotations

from service.web.views.pack.addresses import page_of_packed, page_of_table


def test_numbers_are_told_whole() -> None:
    """Whatever signs they hold."""
    assert page_of_table("PM/7 a&b", layer=2) == "/pack/table?container=PM%2F7+a%26b&layer=2"
    assert page_of_table("B-1") == "/pack/table?container=B-1"
    assert page_of_packed("PM/7 a") == "/pack/packed/PM/7%20a"
