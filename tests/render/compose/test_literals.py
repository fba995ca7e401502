from __future__ import annotations

import pikepdf
import pytest

from service.render.compose.literals import numeral, references, text_literal


@pytest.mark.parametrize(
    "text",
    [
        pytest.param("B-042, brass (two) \\ \n next", id="signs that must be escaped"),
        pytest.param("Grün — “1 €” • œuvre", id="signs of PDFDocEncoding"),
        pytest.param("ثقيل 標本 \r)(", id="signs of other scripts"),
        pytest.param("þÿ at the start", id="the signs that announce UTF-16"),
        pytest.param("soft\N{SOFT HYPHEN}hyphen\N{NO-BREAK SPACE}blank", id="signs it lacks"),
        pytest.param("\N{PACKAGE} ad\x18\x7f", id="beyond 16 bits, and control codes"),
        pytest.param("", id="nothing"),
    ],
)
def test_every_text_reads_back(text: str) -> None:
    """Another library reads what was written, whichever way it was spelled."""
    read = pikepdf.Object.parse(text_literal(text))
    assert str(read) == text


@pytest.mark.parametrize(
    ("text", "expected"),
    [("a(b)", b"(a\\(b\\))"), ("ü—€", b"(\xfc\x84\xa0)"), ("ث", b"(\xfe\xff\x06\x2b)")],
)
def test_texts_are_as_short_as_they_can_be(text: str, expected: bytes) -> None:
    """A byte a sign where the encoding has it (ISO 32000-1, annex D.2), else two."""
    assert text_literal(text) == expected


def test_numbers_and_references_are_plain() -> None:
    """No exponent, no trailing noughts."""
    assert [numeral(value) for value in (1.0, -0.5, 1 / 3, 100.0, 0.0)] == [
        *(b"1", b"-0.5", b"0.333", b"100", b"0")
    ]
    assert references([3, 4]) == b"[3 0 R 4 0 R]"
    assert references([]) == b"[]"
