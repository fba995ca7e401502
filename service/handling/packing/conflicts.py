"""Finds materials in one container that harm each other, among objects and packing materials."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from service.contents.packing import PackedObject, Packing
from service.findings import Finding
from service.handling.materials import find_material, object_material
from service.handling.packing.conflict_rules import CONFLICTS, Conflict
from service.handling.packing.report import Known, name_some, report

CODE = "conflicting-materials"


@dataclass(frozen=True, slots=True)
class _Lying:
    """An object and the nested container it lies in, 0 for none."""

    packed: PackedObject
    nest: int


def check_conflicts(packing: Packing, _known: Known) -> Iterator[Finding]:
    """Report each object or packing material that harms others, naming those it harms.

    Objects of one nested container are left to the check of that container.
    """
    lying = [_Lying(packed, 0) for packed in packing.contents]
    lying += [
        _Lying(packed, nest)
        for nest, inner in enumerate(packing.nested, start=1)
        for packed in inner.everything
    ]
    for conflict in CONFLICTS:
        for one in lying:
            yield from _check_object(packing, conflict, one, lying)
        yield from _check_wrapping(packing, conflict, lying)


def _check_object(
    packing: Packing, conflict: Conflict, one: _Lying, lying: list[_Lying]
) -> Iterator[Finding]:
    material = _find(one, conflict.harming)
    if not material:
        return
    harmed = [
        _name(other, conflict)
        for other in lying
        if _may_meet(one, other, needs_contact=conflict.needs_contact)
        and _is_harmed(other, conflict)
    ]
    if harmed:
        number = one.packed.record.object_number
        what = f"{number} ({material}) lies with {name_some(harmed)}."
        yield report(conflict.rule, packing, what, packed=one.packed, code=CODE)


def _check_wrapping(packing: Packing, conflict: Conflict, lying: list[_Lying]) -> Iterator[Finding]:
    """Report what a packing material harms; one that harms everything is unsuitable anyway."""
    if not conflict.harmed:
        return
    materials = packing.container.packing_materials
    found = next(filter(None, (find_material(materials, name) for name in conflict.harming)), "")
    harmed = [_name(one, conflict) for one in lying if _is_harmed(one, conflict)] if found else []
    if harmed:
        what = f"The packing material {found} lies with {name_some(harmed)}."
        yield report(conflict.rule, packing, what, code=CODE)


def _may_meet(one: _Lying, other: _Lying, *, needs_contact: bool) -> bool:
    if one is other or one.packed.record.object_number == other.packed.record.object_number:
        return False
    if one.nest and one.nest == other.nest:
        return False
    first, second = one.packed.place, other.packed.place
    near = (one.nest, first.layer, first.compartment) == (
        other.nest,
        second.layer,
        second.compartment,
    )
    return not needs_contact or (near and bool(first.compartment))


def _is_harmed(one: _Lying, conflict: Conflict) -> bool:
    """Tell whether an object is of a group that is harmed; its own kind harms nothing new."""
    if conflict.harmed:
        return bool(_find(one, conflict.harmed))
    return not _find(one, conflict.harming)


def _name(one: _Lying, conflict: Conflict) -> str:
    material = _find(one, conflict.harmed)
    number = one.packed.record.object_number
    return f"{number} ({material})" if material else number


def _find(one: _Lying, groups: tuple[str, ...]) -> str:
    return next(filter(None, (object_material(one.packed.record, name) for name in groups)), "")
