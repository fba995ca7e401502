from __future__ import annotations

import pytest

from service.errors import UnreadableFileError
from service.records.sources.document import read_document


def test_document_is_one_object() -> None:
    """A JSON object comes as it is, in any Unicode encoding, with a pair of surrogates joined."""
    text = '{"a": [1, 2.5, "\\ud83d\\ude00", null, true]}'
    expected = {"a": [1, 2.5, "\N{GRINNING FACE}", None, True]}
    assert read_document(text.encode(), name="x.json") == expected
    assert read_document(text.encode("utf-16"), name="x.json") == expected


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"[1]",
        b"{",
        b'{"a": NaN}',
        b'{"a": -Infinity}',
        b'{"a": 1e999}',
        b'{"a": "\\ud800"}',
        b'{"\\udfff": 1}',
        b'{"a": 1, "a": 2}',
        b'{"a": ' + b"9" * 5000 + b"}",
        b'{"a": ' + b"[" * 20 + b"]" * 20 + b"}",
        b'{"a": ' + b"[" * 200_000 + b"]" * 200_000 + b"}",
        b'{"a": "\xe9"}',
    ],
    ids=[
        "empty",
        "no object",
        "cut short",
        "NaN",
        "Infinity",
        "overflow",
        "half a pair",
        "half a pair as key",
        "key twice",
        "huge integer",
        "deep",
        "very deep",
        "not UTF-8",
    ],
)
def test_document_that_could_not_be_stored_is_refused(data: bytes) -> None:
    """What RFC 8259 leaves open or another program would choke on is refused by name."""
    with pytest.raises(UnreadableFileError, match=r"^x\.json cannot be read"):
        read_document(data, name="x.json")
