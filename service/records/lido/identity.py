"""What an object is known by: its numbers, title, name and address in the catalogue."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from service.records.lido.element import (
    TERMINOLOGY,
    Block,
    Element,
    find_all,
    is_preferred,
    read_attribute,
    read_term,
    read_text,
    texts_in_one_language,
)
from service.records.sources.columns import OBJECT_COLUMNS, heading_key

# Beside the English words of the table: German, French, Dutch, Italian and Spanish; from memory.
_INVENTORY_TYPES = frozenset(
    heading_key(word)
    for word in (
        f"http://{TERMINOLOGY}lido00113",
        "inventory number",
        "inventory no",
        "Inventarnummer",
        "Inventar-Nr.",
        "Inv.-Nr.",
        "numéro d'inventaire",
        "inventarisnummer",
        "inventarisatienummer",
        "numero d'inventario",
        "número de inventario",
    )
)
_FORMER = "former"


@dataclass(frozen=True, slots=True)
class Numbers:
    """The numbers of a record.

    Attributes:
        number: The one to use; empty where there is none.
        others: Numbers that claim to be the same thing.
        former: All other numbers of the object.
        substitute: Whether `number` is not the museum's but that of the record.
    """

    number: str = ""
    others: tuple[str, ...] = ()
    former: tuple[str, ...] = ()
    substitute: bool = False


def read_numbers(record: Element, blocks: Sequence[Block]) -> Numbers:
    """Choose the inventory number, else one without a type, else the number of the record."""
    ranked = list(dict.fromkeys(_rank_numbers(blocks)))
    best = min((rank for rank, _number in ranked if rank is not None), default=None)
    chosen = [number for rank, number in ranked if rank is not None and rank == best]
    if not chosen:
        former = tuple(dict.fromkeys(number for _rank, number in ranked))
        return Numbers(_record_number(record), former=former, substitute=True)
    rest = dict.fromkeys(number for _rank, number in ranked if number != chosen[0])
    return Numbers(chosen[0], others=tuple(chosen[1:]), former=tuple(rest))


def _rank_numbers(blocks: Iterable[Block]) -> Iterator[tuple[int | None, str]]:
    """Give each number with its rank, 0 being best; None where it is not the object's number."""
    for block in blocks:
        for repository in find_all(
            block.element, "objectIdentificationWrap/repositoryWrap/repositorySet"
        ):
            left = _FORMER in read_attribute(repository, "type").casefold()
            for work in find_all(repository, "workID"):
                if number := read_text(work):
                    yield (None if left else _rank(read_attribute(work, "type"))), number


def _rank(kind: str) -> int | None:
    if heading_key(kind) in _INVENTORY_TYPES:
        return 0
    if OBJECT_COLUMNS.find(kind) == OBJECT_COLUMNS.number:
        return 1
    return None if kind else 2


def _record_number(record: Element) -> str:
    """Give the published or the record's own number, one that is no address before one that is."""
    elements = (*find_all(record, "objectPublishedID"), *find_all(record, "lidoRecID"))
    numbers = [number for element in elements if (number := read_text(element))]
    return min(numbers, key=lambda number: "://" in number, default="")


def read_titles(blocks: Iterable[Block]) -> list[str]:
    """Give the preferred titles in one language; there should be one."""
    for block in blocks:
        sets = find_all(block.element, "objectIdentificationWrap/titleWrap/titleSet")
        values = [(each, value) for each in sets for value in find_all(each, "appellationValue")]
        preferred = [value for each, value in values if is_preferred(each) and is_preferred(value)]
        titles = texts_in_one_language(
            preferred or [value for _each, value in values], block.language
        )
        if titles:
            return titles
    return []


def read_object_name(blocks: Iterable[Block]) -> str:
    """Give the term of the first kind of object or work."""
    for block in blocks:
        steps = "objectClassificationWrap/objectWorkTypeWrap/objectWorkType"
        for concept in find_all(block.element, steps):
            if term := read_term(concept, block.language):
                return term
    return ""


def read_address(blocks: Iterable[Block]) -> str:
    """Give the address of the record for people, https before others."""
    links = [
        read_text(link)
        for block in blocks
        for link in find_all(block.element, "recordWrap/recordInfoSet/recordInfoLink")
        if "xml" not in read_attribute(link, "formatResource").casefold()
    ]
    return min(filter(None, links), key=lambda link: not link.startswith("https://"), default="")
