"""Checks what lies above what: heavy, light, fragile, and what may bear nothing."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from service.contents.packing import PackedObject, Packing
from service.findings import Finding
from service.handling.lifting import format_kg
from service.handling.packing.report import Known, name_some, report
from service.handling.packing.rules import HEAVY_ABOVE_FRAGILE, HEAVY_ABOVE_LIGHT, UNDER_OTHERS
from service.handling.phrases import find_phrase
from service.handling.rule import Rule
from service.sentence import Sentence

MARGIN_G = 500.0
"""What counts as heavy above the fragile, and as heavier than another.

Common practice, no source: a smaller difference is not worth a finding.
"""
_FRAGILE = frozenset(("fragile", "glass", "flaking-surface"))
_TRAYS = ("tray", "trays")
_Found = dict[int, tuple[PackedObject, list[str]]]


def check_order(packing: Packing, _known: Known) -> Iterator[Finding]:
    """Report what lies in a layer above another and should not; each pair under one rule only.

    Objects in compartments of different names do not lie above each other. On a tray nothing
    presses on what is below; the heavier of two is then still the one to lie below.
    """
    container = packing.container
    all_on_trays = _has_tray(container.handling_notes, *container.packing_materials)
    found: dict[str, _Found] = defaultdict(dict)
    for upper, lower, on_tray in _pairs(packing):
        may_press = not (on_tray or all_on_trays)
        rule = (_judge_pressure(upper, lower) if may_press else None) or _judge_weights(
            upper, lower
        )
        if rule is not None:
            at, other = (lower, upper) if rule is UNDER_OTHERS else (upper, lower)
            _, names = found[rule.code].setdefault(id(at), (at, []))
            names.append(_name(other))
    for rule in (UNDER_OTHERS, HEAVY_ABOVE_FRAGILE, HEAVY_ABOVE_LIGHT):
        side = Sentence("below") if rule is UNDER_OTHERS else Sentence("above")
        for at, names in found[rule.code].values():
            what = Sentence(
                "{name} lies in layer {layer} {side} {names}.",
                name=_name(at),
                layer=at.place.layer,
                side=side,
                names=name_some(names),
            )
            yield report(rule, packing, what, packed=at)


def _pairs(packing: Packing) -> Iterator[tuple[PackedObject, PackedObject, bool]]:
    """Give pairs of which one may lie above the other, and whether the upper one is on a tray.

    Below what is not known to be heavy only those are of interest that bear nothing at all.
    """
    for at, layer in enumerate(packing.layers):
        lower = [packed for below in packing.layers[at + 1 :] for packed in below.contents]
        bare = [packed for packed in lower if "nothing-on-top" in packed.record.cautions]
        for upper in layer.contents:
            on_tray = _has_tray(upper.place.note)
            below = lower if _is_heavy(upper) else bare
            yield from ((upper, one, on_tray) for one in below if not _are_apart(upper, one))


def _are_apart(upper: PackedObject, lower: PackedObject) -> bool:
    above, below = upper.place.compartment, lower.place.compartment
    return bool(above and below) and above != below


def _has_tray(*texts: str) -> bool:
    return any(find_phrase(text, _TRAYS) for text in texts)


def _judge_pressure(upper: PackedObject, lower: PackedObject) -> Rule | None:
    """Give the rule that a pair breaks where one may press on the other, the gravest first."""
    if "nothing-on-top" in lower.record.cautions:
        return UNDER_OTHERS
    is_fragile = not _FRAGILE.isdisjoint(lower.record.cautions)
    return HEAVY_ABOVE_FRAGILE if _is_heavy(upper) and is_fragile else None


def _is_heavy(packed: PackedObject) -> bool:
    weight = packed.record.weight
    return weight is not None and weight.weight_g >= MARGIN_G


def _judge_weights(upper: PackedObject, lower: PackedObject) -> Rule | None:
    heavier, lighter = upper.record.weight, lower.record.weight
    if heavier is None or lighter is None or heavier.weight_g - lighter.weight_g < MARGIN_G:
        return None
    return HEAVY_ABOVE_LIGHT


def _name(packed: PackedObject) -> str:
    weight = packed.record.weight
    figure = f" ({format_kg(weight.weight_g)} kg)" if weight else ""
    return packed.record.object_number + figure
