"""The records of a LIDO file one after the other, so that memory does not grow with the file.

No document type, no entity and no address of a file is ever followed.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from lxml import etree  # type: ignore[import-untyped] # It ships no types; `Element` ends that.

from service.errors import UnreadableFileError
from service.records.lido.element import Element, clark_name
from service.sentence import Sentence

RECORD_LIMIT_BYTES = 4_000_000
"""Nothing that a museum says of one object is longer; common practice, no source."""

_PIECE_BYTES = 65_536
_RECORD = clark_name("lido")
_ROOTS = (clark_name("lidoWrap"), _RECORD)


def read_records(chunks: Iterable[bytes], *, name: str) -> Iterator[Element]:
    """Give each record of a file; it is emptied when the next one is asked for.

    Raises:
        UnreadableFileError: When the file is not LIDO, declares a document type, is nested deeper
            than the parser goes, or holds a record that is too long or none at all.
    """
    found = False
    try:
        for record in _parse(_cut(chunks), name=name):
            found = True
            yield record
    except etree.XMLSyntaxError as error:
        raise UnreadableFileError(
            name, tried=Sentence("it is not usable XML ({msg})", msg=error.msg)
        ) from error
    if not found:
        raise UnreadableFileError(name, tried="it holds no LIDO record")


def _parse(pieces: Iterable[bytes], *, name: str) -> Iterator[Element]:
    head, parser = _make_parser("start"), _make_parser("end", tag=_RECORD)
    begun = False
    waiting_bytes = 0
    for piece in pieces:
        begun = begun or _begins(head, piece, name=name)
        parser.feed(piece)
        waiting_bytes += len(piece)
        for _event, record in parser.read_events():
            waiting_bytes = 0
            yield record
            _forget(record)
        if waiting_bytes > RECORD_LIMIT_BYTES:
            tried = Sentence(
                "a record is longer than {record_limit_bytes} MB",
                record_limit_bytes=RECORD_LIMIT_BYTES // 1000000,
            )
            raise UnreadableFileError(name, tried=tried)
    parser.close()


def _make_parser(event: str, *, tag: str | None = None) -> etree.XMLPullParser:
    return etree.XMLPullParser(
        events=(event,),
        tag=tag,
        resolve_entities=False,
        load_dtd=False,
        dtd_validation=False,
        no_network=True,
        huge_tree=False,
        remove_comments=True,
        remove_pis=True,
        collect_ids=False,
    )


def _begins(head: etree.XMLPullParser, piece: bytes, *, name: str) -> bool:
    """Look at the first element as soon as it is there, before anything is made of the rest.

    Raises:
        UnreadableFileError: When a document type is declared, or the file is of another kind.
    """
    head.feed(piece)
    _event, root = next(iter(head.read_events()), (None, None))
    if root is None:
        return False
    if root.getroottree().docinfo.doctype:
        tried = Sentence("it declares a document type (DOCTYPE), which LIDO does not need")
        raise UnreadableFileError(name, tried=tried)
    if root.tag not in _ROOTS:
        kind = etree.QName(root).localname[:60]
        raise UnreadableFileError(
            name, tried=Sentence("it is not LIDO; its first element is {kind!r}", kind=kind)
        )
    return True


def _forget(record: etree._Element) -> None:
    """Empty a record and take away those before it."""
    record.clear()
    parent = record.getparent()
    while parent is not None and record.getprevious() is not None:
        del parent[0]


def _cut(chunks: Iterable[bytes]) -> Iterator[bytes]:
    for chunk in chunks:
        for at in range(0, len(chunk), _PIECE_BYTES):
            yield chunk[at : at + _PIECE_BYTES]
