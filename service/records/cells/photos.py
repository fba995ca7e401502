"""Photos: `x_front.jpg; x_back.jpg (back); y.jpg (detail)`, the first one the front."""

from __future__ import annotations

import re

from service.records.record import PhotoReference, PhotoRole
from service.records.rows.cell import Cell, Item
from service.records.rows.text import quote_text
from service.sentence import Sentence

# A bracket belongs to a file name such as "jar (1).jpg" unless it stands last.
_ROLE = re.compile(r"(.*\S)\s*\(([^()]*)\)", re.DOTALL)


def read_photos(cell: Cell) -> tuple[PhotoReference, ...]:
    """Read the photos in their order; those after the first are details unless they say more."""
    if cell.listed is None and not cell.value:
        return ()
    photos: list[PhotoReference] = []
    for item in cell.items():
        file, role = _split(item)
        usual = PhotoRole.DETAIL if photos else PhotoRole.FRONT
        if file:
            photos.append(PhotoReference(file, _read_role(role, cell, usual=usual)))
    return tuple(photos)


def _split(item: Item) -> tuple[str, str]:
    if not isinstance(item, str):
        return item.get("file", ""), item.get("role", "")
    match = _ROLE.fullmatch(item)
    return (match[1], match[2].strip()) if match else (item, "")


def _read_role(text: str, cell: Cell, *, usual: PhotoRole) -> PhotoRole:
    if not text:
        return usual
    role = next((role for role in PhotoRole if role == text.casefold()), None)
    if role is None:
        message = Sentence(
            "{text} is not front, back or detail; it was taken as {usual}.",
            text=quote_text(text),
            usual=usual,
        )
        cell.note("unknown-photo-role", message)
    return role or usual
