from __future__ import annotations

from dataclasses import replace

import pytest

from service.contents.packing import Packing
from service.handling.packing.conflict_rules import RULES
from service.handling.packing.conflicts import CODE
from service.records.record import Hazard, HazardState, ObjectRecord
from tests.handling.packing.made import BOX, at, found, noticed, pack, thing

NITRATE = ObjectRecord("1", hazards=(Hazard("nitrate-film", HazardState.CONFIRMED),))
ACETATE = ObjectRecord("1", hazards=(Hazard("acetate-film", HazardState.UNCHECKED),))
FLAG = ObjectRecord("1", hazards=(Hazard("naphthalene", HazardState.PRESUMED),))

# The rule, a packing that breaks it, and one that just does not.
TWINS: list[tuple[str, Packing, Packing]] = [
    (
        "tarnish-near-sulphur",
        pack(thing("1", "wool"), thing("2", "silver")),
        pack(thing("1", "cotton wool"), thing("2", "silver")),
    ),
    (
        "lead-near-oak",
        pack(thing("1", "oak"), thing("2", "lead")),
        pack(thing("1", "oak"), thing("2", "lead crystal")),
    ),
    (
        "lead-near-acid-board",
        pack(thing("1", "acid board"), thing("2", "shell")),
        pack(thing("1", "acid-free board"), thing("2", "shell")),
    ),
    (
        "copper-on-leather",
        pack(
            at(thing("1", "leather"), compartment="A1"), at(thing("2", "brass"), compartment="A1")
        ),
        pack(
            at(thing("1", "leather"), compartment="A1"), at(thing("2", "brass"), compartment="B1")
        ),
    ),
    (
        "lead-near-acid-board",
        pack(thing("1", "plywood"), thing("2", "pewter")),
        pack(thing("1", "beech"), thing("2", "pewter")),
    ),
    (
        "pewter-near-oak",
        pack(thing("1", "oak"), thing("2", "mother-of-pearl")),
        pack(thing("1", "oak"), thing("2", "shellac")),
    ),
    (
        "nitrate-apart",
        pack(NITRATE, thing("2")),
        pack(NITRATE, replace(NITRATE, object_number="2")),
    ),
    ("acetate-apart", pack(ACETATE, thing("2")), pack(ACETATE)),
    (
        "celluloid-near-metal",
        pack(thing("1", "celluloid"), thing("2", "steel")),
        pack(thing("1", "celluloid"), thing("2", "glass")),
    ),
    (
        "mothballs-near-plastic",
        pack(FLAG, thing("2", "polystyrene")),
        pack(FLAG, thing("2", "polyethylene")),
    ),
    (
        "weighted-silk-alone",
        pack(thing("1", "weighted silk"), thing("2", "linen")),
        pack(thing("1", "silk"), thing("2", "linen")),
    ),
    (
        "rubber-alone",
        pack(at(thing("1", "rubber"), compartment="A1"), at(thing("2", "paper"), compartment="A1")),
        pack(at(thing("1", "rubber"), compartment="A1"), at(thing("2", "paper"), compartment="A2")),
    ),
    (
        "pvc-alone",
        pack(at(thing("1", "PVC"), compartment="A1"), at(thing("2", "paper"), compartment="A1")),
        pack(thing("1", "PVC"), thing("2", "paper")),
    ),
    (
        "copper-on-leather",
        pack(
            at(thing("1", "leather"), compartment="A1"), at(thing("2", "brass"), compartment="A1")
        ),
        pack(
            at(thing("1", "leather"), compartment="A1"),
            at(thing("2", "brass"), layer=2, compartment="A1"),
        ),
    ),
    (
        "copper-on-leather",
        pack(
            at(thing("1", "leather"), compartment="A1"), at(thing("2", "bronze"), compartment="A1")
        ),
        pack(at(thing("1", "leather"), compartment="A1"), at(thing("2", "wood"), compartment="A1")),
    ),
    (
        "buffered-near-protein",
        pack(thing("1", "silk"), packing_materials=("buffered tissue",)),
        pack(thing("1", "silk"), packing_materials=("unbuffered tissue",)),
    ),
]


NAMES = [f"{number} {rule}" for number, (rule, *_) in enumerate(TWINS, 1)]


@pytest.mark.parametrize(("rule", "broken", "_kept"), TWINS, ids=NAMES)
def test_a_conflict_is_found(rule: str, broken: Packing, _kept: Packing) -> None:
    """Each pair of materials that harm each other is one finding, under its own rule."""
    (finding,) = (one for one in noticed(broken) if one.code == CODE)
    assert f"(Rule {rule}: " in finding.advice


@pytest.mark.parametrize(("rule", "_broken", "kept"), TWINS, ids=NAMES)
def test_its_twin_is_not(rule: str, _broken: Packing, kept: Packing) -> None:
    """What just does not break the rule is no finding."""
    assert rule in {one.code for one in RULES}
    assert found(kept) == []


def test_every_rule_has_its_twins() -> None:
    """No pair stands in the table that was not tried."""
    assert {rule for rule, *_ in TWINS} == {rule.code for rule in RULES}


def test_a_finding_says_what_harms_what_and_why() -> None:
    """Materials stand as they were written, and the source is named."""
    made = pack(thing("1", "india rubber"), thing("2", "gelatin silver print"), thing("3", "brass"))
    (finding,) = noticed(made)
    assert (finding.where.container_number, finding.where.object_number) == ("B-1", "1")
    assert finding.message == (
        "1 (india rubber) lies with 2 (gelatin silver print) and 3 (brass)."
        " Silver, copper alloys and metal thread tarnish near wool and rubber."
    )
    assert finding.advice == (
        "Ask a conservator first, then pack them apart. (Rule tarnish-near-sulphur:"
        " Museums Galleries Scotland, guidance on materials that harm metals.)"
    )


def test_one_rule_is_one_finding_of_a_container() -> None:
    """Several that harm the same neighbours are named together, at the container."""
    made = pack(*(thing(str(n), "wool") for n in range(1, 8)), thing("9", "brass"))
    (finding,) = noticed(made)
    assert str(finding.where) == "B-1"
    assert finding.message.startswith(
        "1 (wool), 2 (wool), 3 (wool), 4 (wool) and 3 more lie with 9 (brass)."
    )


def test_one_object_does_not_lie_with_itself() -> None:
    """A tool of several materials is no conflict of packing, nor are two parts of one object."""
    tool = thing("1", "oak", "lead")
    assert found(pack(tool)) == []
    assert found(pack(at(tool), at(tool, layer=2))) == []


def test_packing_materials_harm_objects() -> None:
    """The lining counts as well as the neighbours."""
    made = pack(thing("1", "lead"), packing_materials=("oak slats", "acid-free board"))
    (finding,) = noticed(made)
    assert finding.message.startswith("The packing material oak slats lies with 1 (lead).")
    assert found(pack(thing("1", "lead"), packing_materials=("acid-free cardboard",))) == []


def test_what_lies_in_a_nested_container_counts_once() -> None:
    """A folder's objects meet those of the box; among each other they are the folder's matter."""
    folder = pack(
        thing("1", "wool"), thing("2", "silver"), container=replace(BOX, container_number="F")
    )
    box = replace(pack(thing("3", "brass")), nested=(folder,))
    (finding,) = noticed(box)
    assert finding.message.startswith("1 (wool) lies with 3 (brass).")
    assert [number for _, number in found(folder)] == ["1"]


def test_silence_is_no_finding() -> None:
    """An object without materials is neither harmed nor harming by a rule that names materials."""
    assert found(pack(thing("1"), thing("2", "silver"), thing("3", "lead"))) == []


def test_what_is_harmed_whatever_it_is_of_has_its_number_alone() -> None:
    """Nitrate film lies apart from everything, of any material or of none that is recorded."""
    (finding,) = noticed(pack(NITRATE, thing("2"), thing("3", "wood")))
    assert finding.message.startswith("1 (nitrate film, confirmed) lies with 2 and 3.")
