"""The photos of an object: names of files, taken from addresses that are never opened."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from service.records.lido.element import (
    Block,
    Element,
    find_all,
    read_attribute,
    read_term,
    read_text,
)
from service.records.record import PhotoRole
from service.records.sources.standards import name_file

_SMALL = ("thumb", "preview")


def read_photos(blocks: Iterable[Block]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Give file names of photos, and the addresses that name no picture's file.

    A resource stands for one photo, whatever sizes of it there are; the same name counts once.
    """
    names: list[str] = []
    unnamed: list[str] = []
    for block in blocks:
        for resource in find_all(block.element, "resourceWrap/resourceSet"):
            if name := _name(resource):
                names.append(name)
            else:
                unnamed.extend(_read_links(resource)[:1])
    return tuple(dict.fromkeys(names)), tuple(dict.fromkeys(unnamed))


def read_sides(blocks: Iterable[Block]) -> dict[str, str]:
    """Give the side that each named photo shows, where the file says front, back or detail."""
    sides: dict[str, str] = {}
    for block in blocks:
        for resource in find_all(block.element, "resourceWrap/resourceSet"):
            name = _name(resource)
            for perspective in find_all(resource, "resourcePerspective"):
                side = read_term(perspective, block.language).casefold().removesuffix(" view")
                if side in set(PhotoRole):
                    sides.setdefault(name, side)
    return sides


def _name(resource: Element) -> str:
    return next((name for link in _read_links(resource) if (name := name_file(link))), "")


def _read_links(resource: Element) -> Sequence[str]:
    """Give the addresses of a resource, those of small copies last."""
    kinds = sorted(find_all(resource, "resourceRepresentation"), key=_is_small)
    links = (read_text(link) for kind in kinds for link in find_all(kind, "linkResource"))
    return [link for link in links if link]


def _is_small(representation: Element) -> bool:
    kind = read_attribute(representation, "type").casefold()
    return any(word in kind for word in _SMALL)
