from __future__ import annotations

from service.web.views.shell.addresses import (
    page_of_container,
    page_of_object,
    page_of_user,
    page_with,
)


def test_numbers_stand_in_addresses_whatever_they_hold() -> None:
    """A slash stays one, for paths take the rest; everything else that means something is coded."""
    assert page_of_container("B-027") == "/containers/B-027"
    assert page_of_container("A/1 ?#") == "/containers/A/1%20%3F%23"
    assert page_of_object("1931.14.2a-c") == "/objects/1931.14.2a-c"
    assert page_of_user("Ada & Quill") == "/people?who=Ada+%26+Quill"


def test_what_is_empty_is_left_out() -> None:
    """An address says only what differs from the usual."""
    assert page_with("/find", q="", page=0) == "/find"
    assert page_with("/find", q="a b", page=2) == "/find?q=a+b&page=2"
