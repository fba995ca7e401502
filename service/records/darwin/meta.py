"""meta.xml: which file of an archive holds what, and which term stands in which column."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from lxml import etree  # type: ignore[import-untyped] # It ships no types; `Element` ends that.

from service.errors import UnreadableFileError
from service.records.lido.element import Element
from service.records.sources.delimited import Form
from service.records.sources.table import COLUMNS_LIMIT
from service.sentence import Sentence

META_LIMIT_BYTES = 1_000_000
"""A description of some hundred columns has a hundredth of this."""

_NAMESPACE = "{http://rs.tdwg.org/dwc/text/}"
_PREFIXES = {
    "http://rs.tdwg.org/dwc/terms/": "dwc:",
    "http://purl.org/dc/terms/": "dcterms:",
    "http://purl.org/dc/elements/1.1/": "dc:",
}
_ESCAPES = {"\\t": "\t", "\\n": "\n", "\\r": "\r"}


@dataclass(frozen=True, slots=True)
class Field:
    """One column: its heading, its index from 0 where it has one, and what empty cells mean."""

    heading: str
    index: int | None
    default: str = ""


@dataclass(frozen=True, slots=True)
class Part:
    """One table of an archive; `row_type` is the last word of what its rows are.

    `id_index` is the column that tells which record a row belongs to.
    """

    file: str
    row_type: str
    form: Form
    id_index: int | None
    fields: tuple[Field, ...]


@dataclass(frozen=True, slots=True)
class Meta:
    """The table of records and those that hold more about them."""

    core: Part
    extensions: tuple[Part, ...]


def read_meta(data: bytes, *, name: str) -> Meta:
    """Read the description of an archive.

    Raises:
        UnreadableFileError: When it is too long, not usable XML, declares a document type, or
            describes what cannot be read.
    """
    root = _parse(data, name=name)
    cores = root.findall(f"{_NAMESPACE}core")
    if len(cores) != 1:
        raise UnreadableFileError(name, tried="meta.xml does not describe one table of records")
    extensions = root.findall(f"{_NAMESPACE}extension")
    return Meta(
        _read_part(cores[0], name=name, id_name="id"),
        tuple(_read_part(each, name=name, id_name="coreid") for each in extensions),
    )


def _parse(data: bytes, *, name: str) -> Element:
    if len(data) > META_LIMIT_BYTES:
        raise UnreadableFileError(name, tried="meta.xml is longer than 1 MB")
    parser = etree.XMLParser(
        resolve_entities=False,
        load_dtd=False,
        dtd_validation=False,
        no_network=True,
        huge_tree=False,
        remove_comments=True,
        remove_pis=True,
    )
    try:
        root = etree.fromstring(data, parser)
    except (etree.XMLSyntaxError, ValueError) as error:
        raise UnreadableFileError(name, tried="meta.xml is not usable XML") from error
    if root.getroottree().docinfo.doctype:
        raise UnreadableFileError(name, tried="meta.xml declares a document type (DOCTYPE)")
    parsed: Element = root
    return parsed


def _read_part(element: Element, *, name: str, id_name: str) -> Part:
    files = [
        (location.text or "").strip()
        for location in element.findall(f"{_NAMESPACE}files/{_NAMESPACE}location")
    ]
    if len(files) != 1:
        raise UnreadableFileError(name, tried="meta.xml names no file or several for one table")
    ids = element.findall(_NAMESPACE + id_name)
    return Part(
        file=files[0],
        row_type=_last_word(element.get("rowType") or ""),
        form=_read_form(element, name=name),
        id_index=_read_index(ids[0], name=name) if ids else None,
        fields=tuple(_read_fields(element, name=name)),
    )


def _read_form(element: Element, *, name: str) -> Form:
    delimiter = _unescape(element.get("fieldsTerminatedBy"), usual=",")
    quote = _unescape(element.get("fieldsEnclosedBy"), usual='"')
    if len(delimiter) != 1 or delimiter in '\r\n"' or quote not in {"", '"'}:
        tried = Sentence(
            "its cells are divided by {delimiter!r} and enclosed by {quote!r}",
            delimiter=delimiter,
            quote=quote,
        )
        raise UnreadableFileError(name, tried=tried)
    skipped = _read_whole(element.get("ignoreHeaderLines") or "0", name=name)
    return Form(delimiter, quoted=bool(quote), skipped_lines=skipped)


def _read_fields(element: Element, *, name: str) -> Iterator[Field]:
    for each in element.findall(f"{_NAMESPACE}field"):
        term = (each.get("term") or "").strip()
        base = term.removesuffix(_last_word(term))
        heading = _PREFIXES[base] + _last_word(term) if base in _PREFIXES else term
        yield Field(heading, _read_index(each, name=name), (each.get("default") or "").strip())


def _read_index(element: Element, *, name: str) -> int | None:
    written = element.get("index")
    index = None if written is None else _read_whole(written, name=name)
    if index is not None and index >= COLUMNS_LIMIT:
        raise UnreadableFileError(
            name,
            tried=Sentence("it has more than {columns_limit} columns", columns_limit=COLUMNS_LIMIT),
        )
    return index


def _read_whole(text: str, *, name: str) -> int:
    digits = text.strip()
    if not (digits.isascii() and digits.isdigit() and len(digits) < len("10000")):
        raise UnreadableFileError(
            name, tried=Sentence("meta.xml counts {digits!r}", digits=digits[:20])
        )
    return int(digits)


def _unescape(text: str | None, *, usual: str) -> str:
    return usual if text is None else _ESCAPES.get(text, text)


def _last_word(term: str) -> str:
    return term.replace("#", "/").rsplit("/", 1)[-1]
