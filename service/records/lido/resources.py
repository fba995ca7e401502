"""The photos of an object: names of files, taken from addresses that are never opened."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from service.records.lido.element import Block, Element, find_all, read_attribute, read_text
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
            links = _read_links(resource)
            name = next((name for link in links if (name := name_file(link))), "")
            if name:
                names.append(name)
            else:
                unnamed.extend(links[:1])
    return tuple(dict.fromkeys(names)), tuple(dict.fromkeys(unnamed))


def _read_links(resource: Element) -> Sequence[str]:
    """Give the addresses of a resource, those of small copies last."""
    kinds = sorted(find_all(resource, "resourceRepresentation"), key=_is_small)
    links = (read_text(link) for kind in kinds for link in find_all(kind, "linkResource"))
    return [link for link in links if link]


def _is_small(representation: Element) -> bool:
    kind = read_attribute(representation, "type").casefold()
    return any(word in kind for word in _SMALL)
