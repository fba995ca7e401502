"""When an object was made and of what."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from service.records.lido.element import (
    TERMINOLOGY,
    Block,
    Element,
    find_all,
    first_text,
    read_attribute,
    read_term,
    read_text,
    texts_in_one_language,
)

_DATE = "eventDate/date"

# Production and creation in the published terminology of event types, and their usual words.
_MAKING_CONCEPTS = tuple(f"{TERMINOLOGY}{number}" for number in ("lido00007", "lido00012"))
_MAKING_WORDS = frozenset(
    (
        *("production", "creation", "manufacture", "making"),
        *("herstellung", "entstehung", "erschaffung"),
        *("fabrication", "création", "vervaardiging", "produzione", "creazione"),
        *("producción", "creación"),
    )
)
_TECHNIQUE_CONCEPT = f"{TERMINOLOGY}lido00131"
_TECHNIQUE_STEMS = ("techn", "tecn", "tehn")


def read_periods(blocks: Iterable[Block]) -> list[str]:
    """Give the dates of making in one language; there should be one."""
    for block in blocks:
        dates = [date for event in _makings(block) if (date := _read_date(event, block))]
        if dates:
            return list(dict.fromkeys(dates))
    return []


def read_materials(blocks: Iterable[Block]) -> tuple[str, ...]:
    """Give the materials: terms said to be materials, else the text for display, else any terms."""
    for block in blocks:
        sets = [
            *find_all(
                block.element,
                "objectIdentificationWrap/objectMaterialsTechWrap/objectMaterialsTechSet",
            ),
            *(each for event in _makings(block) for each in find_all(event, "eventMaterialsTech")),
        ]
        if materials := _read_materials_of(sets, block):
            return materials
    return ()


def _makings(block: Block) -> Iterator[Element]:
    for event in find_all(block.element, "eventWrap/eventSet/event"):
        if any(_is_making(kind) for kind in find_all(event, "eventType")):
            yield event


def _is_making(kind: Element) -> bool:
    concepts = [read_text(concept) for concept in find_all(kind, "conceptID")]
    if any(concept.endswith(_MAKING_CONCEPTS) for concept in concepts):
        return True
    terms = [read_text(term) for term in find_all(kind, "term")] or [read_term(kind, "")]
    return any(term.casefold() in _MAKING_WORDS for term in terms)


def _read_date(event: Element, block: Block) -> str:
    shown = first_text(find_all(event, "eventDate/displayDate"), block.language)
    if shown:
        return shown
    earliest = first_text(find_all(event, f"{_DATE}/earliestDate"), block.language)
    latest = first_text(find_all(event, f"{_DATE}/latestDate"), block.language)
    if earliest == latest or not (earliest and latest):
        return earliest or latest
    return f"{earliest} to {latest}"


def _read_materials_of(sets: Iterable[Element], block: Block) -> tuple[str, ...]:
    typed: list[str] = []
    shown: list[str] = []
    plain: list[str] = []
    for each in sets:
        shown += texts_in_one_language(find_all(each, "displayMaterialsTech"), block.language)
        for concept in find_all(each, "materialsTech/termMaterialsTech"):
            kind = read_attribute(concept, "type")
            if (term := read_term(concept, block.language)) and not _is_technique(kind):
                (typed if kind else plain).append(term)
    return tuple(dict.fromkeys(typed or shown or plain))


def _is_technique(kind: str) -> bool:
    return kind.endswith(_TECHNIQUE_CONCEPT) or kind.casefold().startswith(_TECHNIQUE_STEMS)
