"""How cards write dates, counts and places."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from service.printed import to_print
from service.records.record import ContainerKind, Questions

_MONTHS = [
    to_print("Jan"),
    to_print("Feb"),
    to_print("Mar"),
    to_print("Apr"),
    to_print("May"),
    to_print("Jun"),
    to_print("Jul"),
    to_print("Aug"),
    to_print("Sep"),
    to_print("Oct"),
    to_print("Nov"),
    to_print("Dec"),
]

KIND_WORDS = {
    ContainerKind.BOX: to_print("Box"),
    ContainerKind.GARMENT_COVER: to_print("Garment cover"),
    ContainerKind.TUBE: to_print("Tube"),
    ContainerKind.DRAWER: to_print("Drawer"),
    ContainerKind.FOLDER: to_print("Folder"),
}


def lower_first(words: str) -> str:
    """Write words that begin a sentence as they stand within one."""
    return words[:1].lower() + words[1:]


def write_date(day: date) -> str:
    """Write a date that nobody can read the wrong way round: 14 Oct 2026."""
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"


def count(number: int, noun: str) -> str:
    """Write a number with its noun: 1 object, 2 objects."""
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"


def join_words(items: Iterable[str], *, between: str = " · ") -> str:
    """Join those items that say something."""
    return between.join(item for item in items if item)


def write_questions(container: Questions, museum: Questions) -> str:
    """Say whom to ask, the role first; the container's own answer wins over the museum's."""
    asked = container if container.role or container.phone or container.person else museum
    return join_words(
        (join_words((asked.role, asked.phone), between=" "), asked.person), between=", "
    )
