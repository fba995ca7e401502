from __future__ import annotations

import tracemalloc
from collections.abc import Iterator

import pytest

from service.errors import UnreadableFileError
from service.records.lido.element import find_all, read_text
from service.records.lido.stream import read_records

OPEN = b'<l:lidoWrap xmlns:l="http://www.lido-schema.org">'
CLOSE = b"</l:lidoWrap>"
RECORD = b"<l:lido><l:lidoRecID>%d</l:lidoRecID></l:lido>"

LAUGHS = b"".join(
    b'<!ENTITY l%d "%s">' % (level, b"&l%d;" % (level - 1) * 10) for level in range(1, 10)
)
HOSTILE = {
    "laughs in text": b'<!DOCTYPE x [<!ENTITY l0 "ha">%s]>' % LAUGHS
    + OPEN
    + b"<l:lido>&l9;</l:lido>"
    + CLOSE,
    "laughs in an attribute": b'<!DOCTYPE x [<!ENTITY l0 "ha">%s]>' % LAUGHS
    + OPEN
    + b'<l:lido a="&l9;"/>'
    + CLOSE,
    "entity from a file": b'<!DOCTYPE x [<!ENTITY f SYSTEM "file:///etc/hostname">]>'
    + OPEN
    + b"<l:lido>&f;</l:lido>"
    + CLOSE,
    "entity from the network": b'<!DOCTYPE x [<!ENTITY f SYSTEM "http://192.0.2.1/x">]>'
    + OPEN
    + b"<l:lido>&f;</l:lido>"
    + CLOSE,
    "document type elsewhere": b'<!DOCTYPE x SYSTEM "http://192.0.2.1/x.dtd">' + OPEN + CLOSE,
    "parameter entity": b'<!DOCTYPE x [<!ENTITY % p SYSTEM "http://192.0.2.1/x"> %p;]>'
    + OPEN
    + CLOSE,
    "deep": OPEN + b"<l:lido>" + b"<l:a>" * 100_000,
    "undeclared entity": OPEN + b"<l:lido>&nothing;</l:lido>" + CLOSE,
    "two roots": OPEN + b"<l:lido/>" + CLOSE + OPEN + CLOSE,
    "cut off": OPEN + RECORD % 1,
    "nul": OPEN + b"<l:lido>\x00</l:lido>" + CLOSE,
    "no such encoding": b'<?xml version="1.0" encoding="no-such"?>' + OPEN + CLOSE,
    "no LIDO": b"<html><body/></html>",
    "another namespace": b'<lidoWrap xmlns="http://example.org/"><lido/></lidoWrap>',
    "no record": OPEN + CLOSE,
    "no XML": b"PK\x03\x04",
    "empty": b"",
}


def numbers(*chunks: bytes) -> list[str]:
    """Read the record numbers of a file."""
    return [
        read_text(element)
        for record in read_records(chunks, name="x.xml")
        for element in find_all(record, "lidoRecID")
    ]


def many(count: int) -> Iterator[bytes]:
    """Give the pieces of a file of many records."""
    yield OPEN
    for number in range(count):
        yield RECORD % number
    yield CLOSE


def test_records_come_in_order() -> None:
    """Records of a wrap are given one by one, wherever the pieces end."""
    data = b"".join(many(3))
    assert numbers(data) == ["0", "1", "2"]
    assert numbers(*(data[at : at + 7] for at in range(0, len(data), 7))) == ["0", "1", "2"]


def test_single_record_is_a_file() -> None:
    """A file may hold one record without a wrap."""
    data = b'<lido xmlns="http://www.lido-schema.org"><lidoRecID>7</lidoRecID></lido>'
    assert numbers(data) == ["7"]


@pytest.mark.parametrize("encoding", ["utf-8-sig", "utf-16", "iso-8859-1"])
def test_encodings_of_xml(encoding: str) -> None:
    """Whatever the file says or shows of its encoding is believed."""
    name = encoding.removesuffix("-sig")
    head = f'<?xml version="1.0" encoding="{name}"?>'
    text = (
        f'{head}<l:lido xmlns:l="http://www.lido-schema.org"><l:lidoRecID>é</l:lidoRecID></l:lido>'
    )
    assert numbers(text.encode(encoding)) == ["é"]


@pytest.mark.parametrize("name", HOSTILE)
def test_hostile_file_is_refused(name: str) -> None:
    """What is no LIDO file, or means harm, is an error that names the file; nothing is fetched."""
    with pytest.raises(UnreadableFileError, match=r"x\.xml"):
        numbers(HOSTILE[name])


@pytest.mark.parametrize("start", [b"<l:lido><l:a>", b"<l:a>"], ids=["in a record", "outside"])
def test_endless_text_is_refused_before_it_is_held(start: bytes) -> None:
    """A text of 100 MB ends the reading after 4 MB, and memory stays small."""
    piece = b"x" * 1_000_000
    tracemalloc.start()
    with pytest.raises(UnreadableFileError, match="longer than 4 MB"):
        numbers(OPEN, start, *(piece for _ in range(100)))
    assert tracemalloc.get_traced_memory()[1] < 20_000_000
    tracemalloc.stop()


def test_junk_between_records_is_refused() -> None:
    """Elements without end that are no records count as one record that is too long."""
    with pytest.raises(UnreadableFileError, match="longer than 4 MB"):
        numbers(OPEN, *(b"<l:a/>" * 10_000 for _ in range(100)))


@pytest.mark.slow
def test_records_are_let_go() -> None:
    """A record is empty once the next one is asked for."""
    kept = [find_all(record, "lidoRecID") for record in read_records(many(2000), name="x.xml")]
    assert [len(found) for found in kept] == [1] * 2000
    records = list(read_records(many(2000), name="x.xml"))
    assert [record for record in records if find_all(record, "lidoRecID")] == []
