from __future__ import annotations

from urllib.parse import quote, unquote

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.symbols.percent import percent_decode, percent_encode


@pytest.mark.parametrize(
    ("text", "encoded"),
    [
        ("1987.412.3", "1987.412.3"),
        ("PMM/77/3", "PMM%2F77%2F3"),
        ("1931.14.2a-c", "1931.14.2a-c"),
        ("~_", "~_"),
        ("50% & more", "50%25%20%26%20more"),
        ("É", "%C3%89"),
        ("\N{LATIN SMALL LETTER E}\N{COMBINING ACUTE ACCENT}", "e%CC%81"),
    ],
)
def test_encodes_all_but_the_unreserved(text: str, encoded: str) -> None:
    """Only the unreserved signs of RFC 3986 stay, a slash does not."""
    assert percent_encode(text) == encoded


@given(st.text(st.characters(codec="utf-8")))
def test_agrees_with_the_standard_library(text: str) -> None:
    """Python's own quoting gives the same, and its unquoting gives the text back."""
    assert percent_encode(text) == quote(text, safe="")
    assert unquote(percent_encode(text)) == text


@given(st.text(st.characters(codec="utf-8")) | st.from_regex(r"(?:%[0-9A-Fa-f]{2}|[a%/ ]){0,9}"))
def test_decodes_as_the_standard_library_does(text: str) -> None:
    """Encoded or not, whole or broken: Python's own unquoting says the same."""
    assert percent_decode(text) == unquote(text)
    assert percent_decode(percent_encode(text)) == text
