"""Checks the container itself: its materials, its dates, its lid, its limit and its weight."""

from __future__ import annotations

import re
from collections.abc import Iterator

from service.contents.packing import Packing
from service.contents.weights import weigh_packing
from service.findings import Finding
from service.handling.lifting import format_kg
from service.handling.materials import find_material, object_material
from service.handling.packing import rules
from service.handling.packing.report import Known, name_some, report
from service.handling.phrases import find_phrase, words_of
from service.handling.rule import Rule
from service.records.record import ContainerKind, ContainerRecord, Lid
from service.sentence import Sentence

MOST_G = 15_000.0
"""Above this an archive tries not to fill a box (one account; common practice, no source)."""

_UNSUITABLE: tuple[tuple[Rule, tuple[str, ...]], ...] = (
    (
        rules.UNSUITABLE,
        (
            "newspaper", "newsprint", "coloured tissue", "colored tissue", "dyed tissue",
            "adhesive tape", "sticky tape", "masking tape", "parcel tape",
            "pressure sensitive tape", "steel clips", "paper clips", "staples",
            "polyurethane", "starch chips", "loose chips", "food carton",
            "food cartons",
        ),
    ),
    (rules.HANGER, ("wire hanger", "wire hangers", "unsealed wooden hanger")),
)  # fmt: skip
_UNSUITABLE_GROUPS = ("rubber", "wool", "pvc")
_TEMPORARY = (
    "bubble wrap", "bubblewrap", "polystyrene", "ordinary foam", "cling film",
    "clingfilm", "upholstery foam",
)  # fmt: skip
_ON_THE_LID = re.compile(
    r" (?:card|label|list|paper)(?: \w+){0,2} (?:on|over|covers)(?: the)? lid "
)


def check_materials(packing: Packing, _known: Known) -> Iterator[Finding]:
    """Report packing materials that published guidance says to avoid."""
    container = packing.container
    for rule, phrases in _UNSUITABLE:
        for item in container.packing_materials:
            if find_phrase(item, phrases):
                yield _report_material(rule, packing, item)
    for group in _UNSUITABLE_GROUPS:
        if item := find_material(container.packing_materials, group):
            yield _report_material(rules.UNSUITABLE, packing, item)
    photographs = [
        packed.record.object_number
        for packed in packing.everything
        if object_material(packed.record, "photograph")
    ]
    if photographs and find_phrase("; ".join(container.packing_materials), ("glassine",)):
        what = Sentence("Glassine lies with {photographs}.", photographs=name_some(photographs))
        yield report(rules.GLASSINE, packing, what, code=rules.UNSUITABLE.code)


def _report_material(rule: Rule, packing: Packing, item: str) -> Finding:
    return report(
        rule, packing, Sentence("Packed with {item}.", item=item), code=rules.UNSUITABLE.code
    )


def check_temporary(packing: Packing, known: Known) -> Iterator[Finding]:
    """Report materials for a few weeks without a date, and dates that are here or past."""
    container = packing.container
    until = container.temporary_until
    if until is None:
        for item in container.packing_materials:
            if find_phrase(item, _TEMPORARY):
                what = Sentence(
                    "Packed with {item}, and no date to repack by is recorded.", item=item
                )
                yield report(rules.TEMPORARY, packing, what)
    elif known.today is not None and until <= known.today:
        what = Sentence(
            "The packing is temporary until {day}; that day has come.",
            day=until.isoformat(),
        )
        yield report(rules.OVERDUE, packing, what)


def check_lid(packing: Packing, known: Known) -> Iterator[Finding]:
    """Report a card on a clear lid: one that is attached, or one that the record speaks of."""
    container = packing.container
    if container.lid is Lid.CLEAR and ("lid-card" in known.cards_on or _speaks_of_card(container)):
        yield report(rules.COVERED_LID, packing, Sentence("The lid is clear and has a card on it."))


def _speaks_of_card(container: ContainerRecord) -> bool:
    said = (container.handling_notes, *container.packing_materials)
    return any(_ON_THE_LID.search(words_of(text)) for text in said)


def check_stacking(packing: Packing, _known: Known) -> Iterator[Finding]:
    """Report a limit that lets boxes stand on top where an object in it forbids that."""
    limit = packing.container.stacking_limit
    forbidding = [
        packed.record.object_number
        for packed in packing.everything
        if "nothing-on-top" in packed.record.cautions
    ]
    if limit and forbidding:
        boxes = Sentence("1 box") if limit == 1 else Sentence("{limit} boxes", limit=limit)
        what = Sentence(
            "{boxes} may stand on top, but nothing on {forbidding}.",
            boxes=boxes,
            forbidding=name_some(forbidding),
        )
        yield report(rules.STACKING, packing, what)


def check_weight(packing: Packing, _known: Known) -> Iterator[Finding]:
    """Report a box that is known to weigh more than boxes are filled to."""
    weight = weigh_packing(packing)
    if packing.container.kind is ContainerKind.BOX and weight.weight_g > MOST_G:
        what = Sentence("It weighs {weight_g} kg or more.", weight_g=format_kg(weight.weight_g))
        yield report(rules.OVERFILLED, packing, what)
