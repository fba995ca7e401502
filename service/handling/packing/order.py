"""Checks what lies above what: heavy, light, fragile, and what may bear nothing."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from service.contents.packing import PackedObject, Packing
from service.findings import Finding
from service.handling.lifting import format_kg
from service.handling.packing.report import Known, name_some, report
from service.handling.packing.rules import HEAVY_ABOVE_FRAGILE, HEAVY_ABOVE_LIGHT, UNDER_OTHERS
from service.handling.rule import Rule

MARGIN_G = 500.0
"""What counts as heavy above the fragile, and as heavier than another.

Common practice, no source: a smaller difference is not worth a finding.
"""
_FRAGILE = frozenset(("fragile", "glass", "flaking-surface"))
_Found = dict[int, tuple[PackedObject, list[str]]]


def check_order(packing: Packing, _known: Known) -> Iterator[Finding]:
    """Report what lies in a layer above another and should not; each pair under one rule only.

    Objects in compartments of different names do not lie above each other.
    """
    found: dict[str, _Found] = defaultdict(dict)
    for upper, lower in _pairs(packing):
        rule = _judge(upper, lower)
        if rule is not None:
            at, other = (lower, upper) if rule is UNDER_OTHERS else (upper, lower)
            _, names = found[rule.code].setdefault(id(at), (at, []))
            names.append(_name(other))
    for rule in (UNDER_OTHERS, HEAVY_ABOVE_FRAGILE, HEAVY_ABOVE_LIGHT):
        side = "below" if rule is UNDER_OTHERS else "above"
        for at, names in found[rule.code].values():
            what = f"{_name(at)} lies in layer {at.place.layer} {side} {name_some(names)}."
            yield report(rule, packing, what, packed=at)


def _pairs(packing: Packing) -> Iterator[tuple[PackedObject, PackedObject]]:
    """Give every pair of which one may lie above the other, the upper one first."""
    for at, layer in enumerate(packing.layers):
        lower = [packed for below in packing.layers[at + 1 :] for packed in below.contents]
        for upper in layer.contents:
            yield from ((upper, one) for one in lower if not _are_apart(upper, one))


def _are_apart(upper: PackedObject, lower: PackedObject) -> bool:
    above, below = upper.place.compartment, lower.place.compartment
    return bool(above and below) and above != below


def _judge(upper: PackedObject, lower: PackedObject) -> Rule | None:
    """Give the rule that a pair breaks, the gravest where it breaks several."""
    if "nothing-on-top" in lower.record.cautions:
        return UNDER_OTHERS
    weight = upper.record.weight
    if weight is None or weight.weight_g < MARGIN_G:
        return None
    if _FRAGILE.intersection(lower.record.cautions):
        return HEAVY_ABOVE_FRAGILE
    lighter = lower.record.weight
    is_lighter = lighter is not None and weight.weight_g - lighter.weight_g >= MARGIN_G
    return HEAVY_ABOVE_LIGHT if is_lighter else None


def _name(packed: PackedObject) -> str:
    weight = packed.record.weight
    figure = f" ({format_kg(weight.weight_g)} kg)" if weight else ""
    return packed.record.object_number + figure
