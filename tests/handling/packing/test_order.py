from __future__ import annotations

import pytest

from service.contents.packing import Packing
from tests.handling.packing.made import at, found, noticed, pack, thing, weighed


@pytest.mark.parametrize(
    ("made", "expected"),
    [
        (pack(at(weighed("1", 900)), at(weighed("2", 400), layer=2)), ["heavy-above-light"]),
        (pack(at(weighed("1", 899)), at(weighed("2", 400), layer=2)), []),
        (pack(at(weighed("1", 400)), at(weighed("2", 900), layer=2)), []),
        (pack(weighed("1", 900), weighed("2", 100)), []),
        (pack(at(weighed("1", 900)), at(thing("2", "wood"), layer=2)), []),
        (
            pack(at(weighed("1", 500)), at(weighed("2", 3000, "glass"), layer=2)),
            ["heavy-above-fragile"],
        ),
        (pack(at(weighed("1", 499)), at(weighed("2", 3000, "glass"), layer=2)), []),
        (pack(at(weighed("1", 900)), at(weighed("2", 3000, "keep-dry"), layer=2)), []),
        (pack(at(thing("1", "iron")), at(thing("2", cautions=("fragile",)), layer=2)), []),
    ],
    ids=[
        "heavier by 500 g",
        "heavier by 499 g",
        "heavier below",
        "in one layer",
        "the lower not weighed",
        "500 g above glass",
        "499 g above glass",
        "above what is not fragile",
        "not weighed above the fragile",
    ],
)
def test_heavy_above_light_or_fragile(made: Packing, expected: list[str]) -> None:
    """What is known to be heavy does not lie above what is lighter or fragile."""
    assert found(made) == [(code, "1") for code in expected]


@pytest.mark.parametrize(
    ("above", "below", "expected"), [("A1", "A1", 1), ("A1", "A2", 0), ("A1", "", 1), ("", "A1", 1)]
)
def test_other_compartments_are_not_below(above: str, below: str, expected: int) -> None:
    """What lies in another compartment lies beside; where none is noted it may lie below."""
    made = pack(
        at(weighed("1", 900), compartment=above),
        at(weighed("2", 100), layer=2, compartment=below),
    )
    assert len(found(made)) == expected


def test_nothing_lies_on_what_bears_nothing() -> None:
    """Even what was never weighed counts, and the pair is reported under one rule only."""
    bare = weighed("2", 100, "nothing-on-top", "fragile")
    assert found(pack(at(weighed("1", 900)), at(bare, layer=2))) == [("under-others", "2")]
    assert found(pack(at(bare), at(weighed("1", 900), layer=2))) == []


def test_a_tray_bears_what_lies_on_it() -> None:
    """Where a tray is recorded nothing presses on what is below, but heavy still goes low."""
    bare, fragile = weighed("2", 100, "nothing-on-top"), weighed("2", 2000, "fragile")
    for lower, codes in ((bare, [("heavy-above-light", "1")]), (fragile, [])):
        noted = pack(at(weighed("1", 900), note="on the tray"), at(lower, layer=2))
        whole = pack(at(weighed("1", 900)), at(lower, layer=2), handling_notes="Lift the trays out")
        assert found(noted) == found(whole) == codes


def test_one_finding_names_all_that_lie_below() -> None:
    """The sentence says what and where, the advice what to do and what backs it."""
    made = pack(
        at(weighed("1", 2000)), at(weighed("2", 100), layer=2), at(weighed("3", 250), layer=3)
    )
    (finding,) = noticed(made)
    assert finding.message == (
        "1 (2.0 kg) lies in layer 1 above 2 (0.1 kg) and 3 (0.2 kg)."
        " The heaviest lies at the bottom, the lightest on top."
    )
    assert finding.advice == (
        "Put the heavier one into the lower layer."
        " (Rule heavy-above-light: common practice, no source.)"
    )


@pytest.mark.parametrize("caution", ["fragile", "glass", "flaking-surface"])
def test_each_caution_that_pressure_breaks(caution: str) -> None:
    """From half a kilogram on (common practice, no source) something above it is told."""
    lower = at(thing("2", cautions=(caution,)), layer=2)
    assert found(pack(at(weighed("1", 500.0)), lower)) == [("heavy-above-fragile", "1")]
    assert not found(pack(at(weighed("1", 499.0)), lower))


def test_a_tray_may_be_noted_anywhere() -> None:
    """Among the packing materials as well as in the notes of the box."""
    lying = (at(weighed("1", 600.0)), at(thing("2", cautions=("glass",)), layer=2))
    assert not found(pack(*lying, packing_materials=("acid-free tissue", "trays of board")))
    assert not found(pack(*lying, handling_notes="Lift the tray out first"))
    assert found(pack(*lying))


def test_what_bears_nothing_is_named_below() -> None:
    """Even something light presses on it; the finding is that of the lower one."""
    bare = weighed("2", 100, "nothing-on-top")
    (finding,) = noticed(
        pack(at(weighed("1", 20)), at(bare, layer=2), at(weighed("3", 10), layer=3))
    )
    assert finding.message.startswith("2 (0.1 kg) lies in layer 2 below 1 (0.02 kg).")
    assert finding.where.object_number == "2"
    assert found(pack(at(thing("1")), at(thing("2", cautions=bare.cautions), layer=2))) == [
        ("under-others", "2")
    ]


def test_each_that_lies_wrong_is_a_finding_of_its_own() -> None:
    """What was never weighed is named without a figure."""
    glass = thing("3", cautions=("glass",))
    made = pack(at(weighed("1", 600)), at(weighed("2", 700)), at(glass, layer=2))
    first, second = noticed(made)
    assert first.message.startswith("1 (0.6 kg) lies in layer 1 above 3. ")
    assert second.message.startswith("2 (0.7 kg) lies in layer 1 above 3. ")
