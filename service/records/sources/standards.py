"""Headings of tables written in the terms of Dublin Core or Darwin Core, and how they fill a cell.

DCMI Metadata Terms (2020) and the Darwin Core list of terms (TDWG). A term that could mean two
columns is left to the museum's own choice, except `format`, which may name the medium or the size:
the size has a term of its own, so `format` is taken for the medium.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

DUBLIN_CORE: Mapping[str, str] = {
    "identifier": "object_number",
    "title": "title",
    "type": "object_name",
    "date": "period",
    "created": "period",
    "medium": "materials",
    "format": "materials",
    "extent": "dimensions",
}
"""Columns by term, as in `dc:title` or `dcterms:extent`."""

DARWIN_CORE: Mapping[str, str] = {
    "catalogNumber": "object_number",
    "scientificName": "title",
    "vernacularName": "object_name",
    "eventDate": "period",
    "individualCount": "number_of_parts",
    "preparations": "materials",
    "otherCatalogNumbers": "former_numbers",
    "associatedMedia": "photos",
}
"""Columns by term, as in `dwc:catalogNumber` or bare."""

# Other words of the object table say these already, or say something else.
_NEVER_BARE = frozenset(("type", "format", "created"))

_DARWIN = "Darwin Core"
_PREFIX = re.compile(r"(dc|dcterms|dwc)[\W_]", re.IGNORECASE)
_PICTURE = re.compile(r"\.(?:jpe?g|jpe|png|hei[cf]|webp|tiff?|avif|gif|bmp)$", re.IGNORECASE)
_PERCENT = re.compile(r"(?:%[0-9a-f]{2})+", re.IGNORECASE)

# The last part of an address by which a picture is cut and scaled (IIIF Image API): no file's name.
_QUALITIES = frozenset(("default", "native", "color", "gray", "bitonal"))


def standard_headings() -> dict[str, str]:
    """Give every heading of the two standards with the column it means."""
    core = {
        f"{prefix}:{term}": column
        for term, column in DUBLIN_CORE.items()
        for prefix in ("dc", "dcterms")
    }
    bare = {term: column for term, column in DUBLIN_CORE.items() if term not in _NEVER_BARE}
    darwin = {f"dwc:{term}": column for term, column in DARWIN_CORE.items()}
    return {**core, **bare, **darwin, **DARWIN_CORE}


def name_standard(heading: str) -> str:
    """Name the standard that a heading shows itself to be of; empty where it could be any word."""
    match = _PREFIX.match(heading)
    if match is None:
        return _DARWIN if heading in DARWIN_CORE else ""
    return _DARWIN if match[1].casefold() == "dwc" else "Dublin Core"


def read_piped(text: str, *, column: str) -> str:
    """Rewrite a Darwin Core list, which has `|` between its items; media become file names."""
    items = [item.strip() for item in text.split("|")]
    if column == "photos":
        items = [name_file(item) or item for item in items]
    return "; ".join(item for item in items if item)


def name_file(address: str) -> str:
    """Give the name of the picture an address or path ends in; empty where it ends in none.

    The name is only ever compared with the names of photos at hand.
    """
    path = re.split(r"[?#]", address, maxsplit=1)[0] if "://" in address else address
    name = re.split(r"[/\\]", _PERCENT.sub(_decode, path).strip())[-1]
    stem = _PICTURE.sub("", name)
    if stem in {name, ""} or stem.startswith(".") or stem.casefold() in _QUALITIES:
        return ""
    return name


def _decode(match: re.Match[str]) -> str:
    return bytes.fromhex(match[0].replace("%", "")).decode(errors="replace")
