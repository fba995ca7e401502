"""What descriptive notes say: the condition, and what our own export keeps in words.

A note counts only where its set says of what kind it is. Other descriptions have no column.
"""

from __future__ import annotations

from collections.abc import Iterable

from service.records.lido.element import Block, find_all, first_text, read_attribute
from service.records.rows.row import Value
from service.records.sources.columns import heading_key

TEXTS = ("condition", "handling_notes")
LISTS = ("hazards", "cautions", "hang_factors", "parts", "accessories")

# German, French, Dutch, Italian and Spanish; from memory.
_CONDITION_WORDS = (
    *("zustand", "erhaltungszustand", "état", "état de conservation", "conditie", "toestand"),
    *("stato di conservazione", "estado de conservación"),
)
_COLUMNS = {heading_key(column): column for column in (*TEXTS, *LISTS)} | {
    heading_key(word): "condition" for word in _CONDITION_WORDS
}


def name_kind(column: str) -> str:
    """Give the kind of note that stands for a column."""
    return column.replace("_", " ")


def read_notes(blocks: Iterable[Block]) -> dict[str, Value]:
    """Read the notes of known kinds, by column, from the first block that has any."""
    for block in blocks:
        if found := _read_block(block):
            return {column: _join(column, texts) for column, texts in found.items()}
    return {}


def _read_block(block: Block) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    steps = "objectIdentificationWrap/objectDescriptionWrap/objectDescriptionSet"
    for each in find_all(block.element, steps):
        column = _COLUMNS.get(heading_key(read_attribute(each, "type")))
        text = first_text(find_all(each, "descriptiveNoteValue"), block.language)
        if column and text:
            found.setdefault(column, []).append(text)
    return found


def _join(column: str, texts: list[str]) -> Value:
    """Give a text as one; of a list the items, a single one as a cell would hold it."""
    if column in TEXTS:
        return "; ".join(texts)
    return tuple(texts) if len(texts) > 1 else texts[0]
