"""Hazards: `code: state, note, method XRF, on 2024-03-12, by R. Vane, review 2027-03-12`."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date

from service.records.cells.dates import parse_date
from service.records.cells.words import find_code
from service.records.codes import HAZARD_CODES
from service.records.record import Hazard, HazardState
from service.records.rows.cell import Cell
from service.records.rows.text import quote_text
from service.sentence import Sentence

_LEADING_WORDS = {
    "method": "method",
    "on": "checked_on",
    "by": "checked_by",
    "review": "review_on",
}
_DATED = ("checked_on", "review_on")
_NONE_KNOWN = frozenset(("none", "no", "nil", "n/a", "none known", "no hazards", "null", "-"))


def split_hazard(text: str) -> dict[str, str]:
    """Take one hazard apart into its named fields; what has no leading word is the note."""
    code, colon, rest = text.partition(":")
    if not colon:
        code, _, rest = text.partition(",")
    fields = {"code": code.strip()}
    notes = []
    for index, piece in enumerate(part.strip() for part in rest.split(",")):
        name, value = _named(piece)
        if index == 0 and _state(piece) is not None:
            fields["state"] = piece
        elif name and name not in fields:
            fields[name] = value
        elif piece:
            notes.append(piece)
    return fields | {"note": ", ".join(notes)}


def read_hazards(cell: Cell) -> tuple[Hazard, ...]:
    """Read the hazards of a cell; an unknown code is kept as written."""
    if cell.text.casefold() in _NONE_KNOWN:
        cell.note(
            "no-hazard-claimed",
            Sentence("The hazards say {text}; none was taken.", text=quote_text(cell.text)),
        )
        return ()
    hazards = (
        _make_hazard(split_hazard(item) if isinstance(item, str) else item, cell)
        for item in cell.items()
    )
    return tuple(hazard for hazard in hazards if hazard.code)


def _named(piece: str) -> tuple[str, str]:
    word, _, value = piece.partition(" ")
    name = _LEADING_WORDS.get(word.casefold(), "")
    # "on the label" is a remark: only what begins like a date is one.
    if name in _DATED and not value[:1].isdigit() and parse_date(value) is None:
        return "", ""
    return name, value.strip()


def _state(text: str) -> HazardState | None:
    return next((state for state in HazardState if state == text.casefold()), None)


def _make_hazard(fields: Mapping[str, str], cell: Cell) -> Hazard:
    written = fields.get("code", "")
    code = find_code(written, HAZARD_CODES)
    if code is None:
        cell.note(
            "unknown-hazard",
            Sentence("{written} is not a known hazard.", written=quote_text(written)),
        )
    state = _state(fields.get("state", ""))
    if state is None:
        said = quote_text(fields["state"]) if fields.get("state") else "nothing"
        cell.note(
            "unknown-hazard-state",
            Sentence("The state of {written} says {said}.", written=quote_text(written), said=said),
        )
    checked_on, checked_note = _day(fields, "checked_on", cell)
    review_on, review_note = _day(fields, "review_on", cell)
    hazard = Hazard(
        code=code or written,
        state=state or HazardState.UNCHECKED,
        method=fields.get("method", ""),
        checked_on=checked_on,
        checked_by=fields.get("checked_by", ""),
        review_on=review_on,
    )
    notes = (fields.get("note", ""), checked_note, review_note)
    return replace(hazard, note=", ".join(note for note in notes if note))


def _day(fields: Mapping[str, str], name: str, cell: Cell) -> tuple[date | None, str]:
    """Give the day a field names, or what goes to the note so that nothing written is lost."""
    text = fields.get(name, "")
    day = parse_date(text)
    if day is not None or not text:
        return day, ""
    cell.note(
        "unreadable-date", Sentence("{text} was not understood as a date.", text=quote_text(text))
    )
    word = next(word for word, field in _LEADING_WORDS.items() if field == name)
    return None, f"{word} {text}"
