from __future__ import annotations

import pytest
from pyipp.exceptions import IPPConnectionError, IPPError, IPPParseError, IPPResponseError

from service.keeping.sending.refusals import STATUSES, word_fault


@pytest.mark.parametrize(
    ("error", "words"),
    [
        (IPPError("x", {"status-code": 0x0504}), "paper, toner or a jam"),
        (IPPError("x"), "0x0000"),
        (IPPConnectionError("x"), "cannot be reached"),
        (IPPParseError("x"), "no printer"),
        (IPPResponseError("x", {"status-code": 500}), "HTTP 500"),
    ],
)
def test_every_fault_has_words(error: IPPError, words: str) -> None:
    """None of them is shown as a number alone."""
    assert words in word_fault(error)


def test_statuses_are_those_of_errors() -> None:
    """Client and server errors (RFC 8011, appendix B.1): 0x04xx and 0x05xx."""
    assert {status >> 8 for status in STATUSES} == {4, 5}
