"""Finds materials in one container that harm each other, among objects and packing materials."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from service.contents.packing import PackedObject, Packing
from service.findings import Finding
from service.handling.materials import find_material, list_materials
from service.handling.packing.conflict_rules import CONFLICTS, Conflict
from service.handling.packing.report import Known, name_some, report
from service.sentence import Sentence

CODE = "conflicting-materials"


@dataclass(frozen=True, slots=True)
class _Lying:
    """An object, the nested container it lies in (0 for none), and its materials by group."""

    packed: PackedObject
    nest: int
    materials: Mapping[str, str]

    @property
    def number(self) -> str:
        return self.packed.record.object_number

    def find(self, groups: tuple[str, ...]) -> str:
        """Give the first material that is of one of the groups, as it was written."""
        return next((self.materials[name] for name in groups if name in self.materials), "")


def check_conflicts(packing: Packing, _known: Known) -> Iterator[Finding]:
    """Report for each rule what harms others, naming those that it harms.

    Objects of one nested container are left to the check of that container.
    """
    nests = (packing.contents, *(inner.everything for inner in packing.nested))
    lying = [
        _Lying(packed, nest, list_materials(packed.record))
        for nest, contents in enumerate(nests)
        for packed in contents
    ]
    for conflict in CONFLICTS:
        yield from _check_objects(packing, conflict, lying)
        yield from _check_wrapping(packing, conflict, lying)


def _check_objects(packing: Packing, conflict: Conflict, lying: list[_Lying]) -> Iterator[Finding]:
    """Report all objects that break a rule in one finding; one that is alone is its place."""
    may_be_harmed = [one for one in lying if _is_harmed(one, conflict)]
    harming: list[_Lying] = []
    harmed: dict[str, str] = {}
    for one in lying:
        if one.find(conflict.harming):
            met = [other for other in may_be_harmed if _may_meet(one, other, conflict)]
            harming += [one] if met else []
            harmed.update((other.number, _name(other, conflict.harmed)) for other in met)
    if harming:
        names = dict.fromkeys(_name(one, conflict.harming) for one in harming)
        lies = Sentence("lies") if len(names) == 1 else Sentence("lie")
        what = Sentence(
            "{names} {lies} with {others}.",
            names=name_some(list(names)),
            lies=lies,
            others=name_some(list(harmed.values())),
        )
        packed = harming[0].packed if len(names) == 1 else None
        yield report(conflict.rule, packing, what, packed=packed, code=CODE)


def _check_wrapping(packing: Packing, conflict: Conflict, lying: list[_Lying]) -> Iterator[Finding]:
    """Report what a packing material harms; one that harms everything is unsuitable anyway."""
    if not conflict.harmed:
        return
    materials = packing.container.packing_materials
    found = next(filter(None, (find_material(materials, name) for name in conflict.harming)), "")
    harmed = [_name(one, conflict.harmed) for one in lying if found and _is_harmed(one, conflict)]
    if harmed:
        what = Sentence(
            "The packing material {found} lies with {harmed}.",
            found=found,
            harmed=name_some(harmed),
        )
        yield report(conflict.rule, packing, what, code=CODE)


def _may_meet(one: _Lying, other: _Lying, conflict: Conflict) -> bool:
    if one.number == other.number or (one.nest and one.nest == other.nest):
        return False
    first, second = one.packed.place, other.packed.place
    return not conflict.needs_contact or (
        bool(first.compartment)
        and (one.nest, first.layer, first.compartment)
        == (other.nest, second.layer, second.compartment)
    )


def _is_harmed(one: _Lying, conflict: Conflict) -> bool:
    """Tell whether an object is of a group that is harmed; its own kind harms nothing new."""
    if conflict.harmed:
        return bool(one.find(conflict.harmed))
    return not one.find(conflict.harming)


def _name(one: _Lying, groups: tuple[str, ...]) -> str:
    material = one.find(groups)
    return f"{one.number} ({material})" if material else one.number
