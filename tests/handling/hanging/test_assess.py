from __future__ import annotations

from dataclasses import replace

import pytest

from service.handling.hanging.assess import WORDS, HangAdvice, HangWay, assess_hanging
from service.handling.hanging.rules import RULES
from service.records.measures import Measure
from service.records.record import ObjectRecord, Weight

DRESS = ObjectRecord("1", object_name="dress", materials=("cotton",))
FLAG = ObjectRecord(
    "2", object_name="flag", materials=("wool",), dimensions=(Measure("width", 1220.0),)
)
SOUND = ("sound-shoulders",)


def factors(*codes: str) -> ObjectRecord:
    """Give the dress these hang factors."""
    return replace(DRESS, hang_factors=codes)


# Each rule once broken and once just not: the record, the way, the reasons, the rules.
CASES: list[tuple[ObjectRecord, str, tuple[str, ...], tuple[str, ...]]] = [
    (
        replace(factors(*SOUND), cautions=("do-not-hang",)),
        "box flat",
        ("do not hang",),
        ("hang-recorded",),
    ),
    (
        replace(DRESS, cautions=("keep-flat",)),
        "box flat",
        ("keep flat",),
        ("hang-recorded",),
    ),
    (replace(DRESS, cautions=("do-not-fold",)), "unknown", (), ("hang-unknown",)),
    (replace(factors(*SOUND), cautions=("fragile",)), "box flat", ("fragile",), ("flat-fragile",)),
    (replace(DRESS, cautions=("loose-parts",)), "unknown", (), ("hang-unknown",)),
    (factors("weak-shoulders"), "box flat", ("weak shoulders",), ("flat-weak-shoulders",)),
    (
        replace(DRESS, condition="Hem soiled; shoulder seams weak"),
        "box flat",
        ("weak shoulders",),
        ("flat-weak-shoulders",),
    ),
    (replace(DRESS, condition="No weak shoulders, net weak"), "unknown", (), ("hang-unknown",)),
    (
        replace(DRESS, condition="Silk shattered at the hem"),
        "box flat",
        ("frail condition",),
        ("flat-fragile",),
    ),
    (replace(DRESS, condition="Silk not shattered"), "unknown", (), ("hang-unknown",)),
    (factors("beads", *SOUND), "box flat", ("beads",), ("flat-beads",)),
    (factors("knit", *SOUND), "box flat", ("knitted",), ("flat-knit",)),
    (factors("bias-cut", *SOUND), "box flat", ("bias cut",), ("flat-bias-cut",)),
    (factors("stretch", *SOUND), "box flat", ("stretches",), ("flat-stretch",)),
    (factors("thin-straps", *SOUND), "box flat", ("thin straps",), ("flat-thin-straps",)),
    (factors("lace"), "box flat", ("lace",), ("flat-lace",)),
    (factors("lace", *SOUND), "hang padded", ("sound shoulders",), ("hang-padded",)),
    (replace(DRESS, materials=("wool",)), "box flat", ("wool",), ("flat-woollen",)),
    (
        replace(factors(*SOUND), materials=("wool",)),
        "hang padded",
        ("sound shoulders",),
        ("hang-padded",),
    ),
    (replace(DRESS, materials=("cotton wool",)), "unknown", (), ("hang-unknown",)),
    (FLAG, "roll", ("large flat textile",), ("roll-large-flat",)),
    (replace(FLAG, dimensions=(Measure("width", 999.0),)), "unknown", (), ("hang-unknown",)),
    (
        replace(FLAG, cautions=("keep-flat",)),
        "box flat",
        ("keep flat",),
        ("hang-recorded",),
    ),
    (factors("heavy-hem"), "hang with waist tapes", ("heavy hem",), ("hang-waist-tapes",)),
    (
        factors("heavy", *SOUND),
        "hang with waist tapes",
        ("heavy", "sound shoulders"),
        ("hang-waist-tapes", "hang-padded"),
    ),
    (
        replace(DRESS, weight=Weight(3000.0)),
        "hang with waist tapes",
        ("heavy (3.0 kg)",),
        ("hang-waist-tapes",),
    ),
    (replace(DRESS, weight=Weight(2999.0)), "unknown", (), ("hang-unknown",)),
    (
        replace(factors("heavy", *SOUND), object_name="coat", weight=Weight(2300.0)),
        "hang padded",
        ("sound shoulders", "heavy (2.3 kg)"),
        ("hang-padded",),
    ),
    (replace(factors("heavy"), object_name="coat"), "unknown", (), ("hang-unknown",)),
    (factors(*SOUND), "hang padded", ("sound shoulders",), ("hang-padded",)),
    (DRESS, "unknown", (), ("hang-unknown",)),
    (ObjectRecord("3"), "unknown", (), ("hang-unknown",)),
]


@pytest.mark.parametrize(("record", "way", "reasons", "codes"), CASES)
def test_each_rule_and_its_twin(
    record: ObjectRecord, way: str, reasons: tuple[str, ...], codes: tuple[str, ...]
) -> None:
    """What the record says decides the way, its reasons and the rules; what it just misses not."""
    advice = assess_hanging(record)
    assert (advice.way.value, advice.reasons) == (way, reasons)
    assert tuple(rule.code for rule in advice.rules) == codes


def test_every_rule_has_its_case() -> None:
    """No rule stands in the table that no record comes to."""
    assert {code for *_, codes in CASES for code in codes} == {rule.code for rule in RULES}


def test_silence_asks_first() -> None:
    """Nothing recorded is no leave to hang."""
    words = "No advice recorded: ask before hanging"
    advice = assess_hanging(ObjectRecord("3"))
    assert (advice.way, advice.words) == (HangWay.UNKNOWN, words)
    assert set(WORDS) == set(HangWay)


def test_everything_that_speaks_against_it_is_said() -> None:
    """Several reasons stand side by side, each once."""
    record = replace(
        factors("beads", "weak-shoulders"), condition="weak shoulders", cautions=("do-not-hang",)
    )
    assert assess_hanging(record).reasons == ("do not hang", "weak shoulders", "beads")
    assert isinstance(assess_hanging(record), HangAdvice)


@pytest.mark.parametrize(
    "said",
    [
        "weak shoulders",
        "shoulders weak",
        "weak shoulder",
        "shoulder weak",
        "weak shoulder seams",
        "shoulder seams weak",
        "shoulder seams split",
        "split shoulder seam",
    ],
)
def test_weak_shoulders_in_any_words(said: str) -> None:
    """However a condition says it, it is the reason for a box."""
    assert assess_hanging(replace(DRESS, condition=said)).reasons == ("weak shoulders",)


@pytest.mark.parametrize("said", ["shattered", "shattering", "frail", "very fragile"])
def test_frailty_in_any_words(said: str) -> None:
    """However a condition says it, it is the reason for a box."""
    assert assess_hanging(replace(DRESS, condition=said)).reasons == ("frail condition",)


@pytest.mark.parametrize("name", ["dress", "gown", "skirt", "petticoat", "robe", "crinoline"])
def test_what_has_a_skirt_hangs_from_its_waist(name: str) -> None:
    """From 3 kg on (common practice, no source); a coat has no waist to hang from."""
    heavy = replace(DRESS, object_name=name, weight=Weight(3000.0))
    assert assess_hanging(heavy).way is HangWay.HANG_WITH_TAPES
    assert assess_hanging(replace(heavy, weight=Weight(2999.0))).way is HangWay.UNKNOWN
    assert assess_hanging(replace(heavy, object_name="coat")).way is HangWay.UNKNOWN


@pytest.mark.parametrize(
    "name",
    [
        *("flag", "banner", "carpet", "rug", "tapestry", "wall hanging", "curtain", "quilt"),
        *("coverlet", "bedspread", "tablecloth", "sail", "blanket"),
    ],
)
def test_large_flat_textiles_are_rolled(name: str) -> None:
    """From 1 m on its longest side (common practice, no source), however short the other is."""
    sides = (Measure("height", 300.0), Measure("width", 1000.0))
    textile = replace(FLAG, object_name=name, dimensions=sides)
    assert assess_hanging(textile).way is HangWay.ROLL
    smaller = replace(textile, dimensions=(sides[0], Measure("width", 999.0)))
    assert assess_hanging(smaller).way is not HangWay.ROLL
    assert assess_hanging(replace(textile, dimensions=())).way is not HangWay.ROLL
