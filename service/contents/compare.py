"""Compares two packings of one container: what came, went, moved or changed."""

from __future__ import annotations

from dataclasses import dataclass

from service.contents.packing import PackedObject, Packing


@dataclass(frozen=True, slots=True)
class PackingDifference:
    """Object numbers that differ between two packings, each in the order of the packing."""

    added: tuple[str, ...] = ()
    removed: tuple[str, ...] = ()
    moved: tuple[str, ...] = ()
    changed: tuple[str, ...] = ()


def compare_packings(before: Packing, after: Packing) -> PackingDifference:
    """Say what differs: added, removed, moved to another place, or described differently."""
    old = {_key(item): item for item in before.contents}
    new = {_key(item): item for item in after.contents}
    kept = [key for key in new if key in old]
    return PackingDifference(
        added=tuple(key[0] for key in new if key not in old),
        removed=tuple(key[0] for key in old if key not in new),
        moved=tuple(key[0] for key in kept if old[key].place != new[key].place),
        changed=tuple(key[0] for key in kept if old[key].record != new[key].record),
    )


def _key(packed: PackedObject) -> tuple[str, tuple[str, ...]]:
    return (packed.record.object_number, packed.place.parts)
