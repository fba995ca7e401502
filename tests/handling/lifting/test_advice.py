from __future__ import annotations

import pytest

from service.contents.weights import Certainty, ContainerWeight
from service.geometry import Size
from service.handling.lifting import LiftAdvice, advise_lift
from service.handling.lifting.hse import SOURCE
from service.handling.lifting.niosh import SOURCE as EQUATION
from service.records.museum.lifting import USUAL_LIFTING, FilterColumn, LiftingChoices, LiftMethod
from service.records.record import ContainerRecord


def weight(
    mass_g: float,
    certainty: Certainty = Certainty.MEASURED,
    *,
    unweighed: int = 0,
    tare_known: bool = True,
) -> ContainerWeight:
    """Make a weight of a container with six objects."""
    return ContainerWeight(mass_g, certainty, unweighed, 6, tare_known)


UNPLACED = ContainerRecord("B-1")
"""A container whose shelf height nobody recorded."""


def advise(
    given: ContainerWeight,
    container: ContainerRecord = UNPLACED,
    choices: LiftingChoices = USUAL_LIFTING,
) -> LiftAdvice:
    """Advise on lifting a container, by the usual choices where none are given."""
    return advise_lift(given, container, choices)


def box(hand_height_mm: float, *, depth_mm: float = 400) -> ContainerRecord:
    """Make a box on a shelf."""
    return ContainerRecord(
        "B-1",
        hand_height_mm=hand_height_mm,
        lid_size=Size(300, depth_mm),
        end_size=Size(300, 200),
    )


@pytest.mark.parametrize(
    ("certainty", "qualifier"),
    [(Certainty.MEASURED, "weighed"), (Certainty.SUM, "sum of the records")],
)
def test_a_whole_weight_says_how_it_is_known(certainty: Certainty, qualifier: str) -> None:
    """What was weighed and what was added up are told apart, and the source is named."""
    found = advise(weight(2_000.0, certainty))
    assert found == LiftAdvice("2.0", qualifier, "Keep close to the body.", SOURCE)


@pytest.mark.parametrize(
    ("unweighed", "tare_known", "qualifier"),
    [
        (2, True, "at least: 2 of 6 not weighed"),
        (0, False, "at least: container not weighed"),
        (2, False, "at least: 2 of 6 not weighed, container not weighed"),
    ],
    ids=["objects", "container", "both"],
)
def test_a_gap_is_named_and_gives_no_tier(
    unweighed: int, qualifier: str, *, tare_known: bool
) -> None:
    """A weight with a gap could be any weight above: the card asks to weigh first."""
    given = weight(500, Certainty.AT_LEAST, unweighed=unweighed, tare_known=tare_known)
    assert advise(given) == LiftAdvice("0.5", qualifier, "Weigh before lifting.")


def test_an_unknown_weight_shows_no_figure() -> None:
    """A nought in figures would read as light."""
    found = advise(weight(0, Certainty.UNKNOWN, unweighed=6, tare_known=False))
    assert found == LiftAdvice("", "Weight not known", "Weigh before lifting.")


def test_an_estimate_gives_no_tier() -> None:
    """A guessed weight is shown as a guess and asks to be checked on the scales."""
    found = advise(weight(5_000, Certainty.ESTIMATED))
    assert found == LiftAdvice("5.0", "estimated", "Weigh before lifting.")


@pytest.mark.parametrize("certainty", [Certainty.UNKNOWN, Certainty.AT_LEAST, Certainty.ESTIMATED])
@pytest.mark.parametrize("method", LiftMethod)
def test_a_doubtful_weight_gives_no_tier_on_any_shelf(
    certainty: Certainty, method: LiftMethod
) -> None:
    """A known place makes no unknown weight known."""
    found = advise(weight(500, certainty, unweighed=1), box(900), LiftingChoices(method=method))
    assert (found.advice, found.reason) == ("Weigh before lifting.", "")


@pytest.mark.parametrize(
    ("mass_g", "advice"),
    [
        (3_000, "Keep close to the body."),
        (3_001, "Not above the shoulder at arm's length."),
        (7_000, "Not above the shoulder at arm's length."),
        (7_001, "At waist height, close to the body."),
        (16_000, "At waist height, close to the body."),
        (16_001, "Two people or a trolley."),
        (25_000, "Two people or a trolley."),
        (25_001, "Trolley or lifting aid; assess before lifting."),
    ],
)
def test_without_a_shelf_height_the_weight_alone_decides(mass_g: float, advice: str) -> None:
    """Each tier begins just above its figure, and no reason is given that is not known."""
    found = advise(weight(mass_g))
    assert (found.advice, found.reason) == (advice, "")


@pytest.mark.parametrize(
    ("mass_g", "advice", "reason"),
    [
        (13_000, "One person: at waist height, close to the body.", "13.0 kg: within 13 kg"),
        (13_001, "Two people or a trolley.", "13.0 kg: just over 13 kg"),
        (17_333, "Two people or a trolley.", "17.3 kg: over 13 kg"),
        (17_334, "Three people or a trolley.", "17.3 kg: over 13 kg"),
        (19_500, "Three people or a trolley.", "19.5 kg: over 13 kg"),
        (19_501, "Trolley or lifting aid; assess before lifting.", "19.5 kg: over 13 kg"),
    ],
)
def test_a_shelf_height_gives_advice_and_its_reason(
    mass_g: float, advice: str, reason: str
) -> None:
    """From one person to a team to an aid, each begins just above its figure."""
    found = advise(weight(mass_g), box(1000))
    place = "for hands between shoulder and elbow, close to the body"
    assert (found.advice, found.reason) == (advice, f"{reason} {place}")
    assert found.source == SOURCE


def test_a_deep_box_on_a_high_shelf() -> None:
    """Far from the body and above the shoulder the smallest cell counts."""
    found = advise(weight(3_100), box(1500, depth_mm=401))
    assert found.advice == "Two people or a trolley."
    assert found.reason == "3.1 kg: over 3 kg for hands above the shoulder, at arm's length"


def test_one_person_is_told_how_to_carry() -> None:
    """What a weight asks anywhere is said on a good shelf, too."""
    found = advise(weight(6_000), box(900))
    assert found.advice == "One person: not above the shoulder at arm's length."


def test_the_equation_where_a_museum_chose_it() -> None:
    """NIOSH: 40 cm out, 40 cm up and travelling 35 cm, HM .625, VM .895, DM .949, fair .95."""
    choices = LiftingChoices(method=LiftMethod.NIOSH)
    found = advise(weight(12_000), box(400), choices)
    # 23 kg x .625 x .895 x .94857 x .95 = 11.59 kg.
    assert found.reason == (
        "12.0 kg: over 11.5 kg for hands 400 mm up and 400 mm out, lifting index 1.1"
    )
    assert (found.advice, found.source) == ("Two people or a trolley.", EQUATION)
    assert advise(weight(11_500), box(400), choices).advice.startswith("One person: ")


def test_beyond_the_reach_of_the_equation_nothing_is_recommended() -> None:
    """NIOSH: hands above 175 cm leave nothing of the load constant."""
    found = advise(weight(1_000), box(1800), LiftingChoices(method=LiftMethod.NIOSH))
    assert found.advice == "Trolley or lifting aid; assess before lifting."
    assert found.reason == "1.0 kg: no weight is recommended for hands 1800 mm up and 400 mm out"


@pytest.mark.parametrize(
    ("choices", "mass_g", "advice", "reason"),
    [
        (
            LiftingChoices(two_people_above_kg=9.0),
            9_001,
            "Two people or a trolley.",
            "9.0 kg: just over 9 kg, the museum's own figure",
        ),
        (
            LiftingChoices(two_people_above_kg=9.0),
            9_000,
            "One person: at waist height, close to the body.",
            "9.0 kg: within 16 kg for hands at waist height, close to the body",
        ),
        (
            LiftingChoices(aid_above_kg=18.0),
            19_000,
            "Trolley or lifting aid; assess before lifting.",
            "19.0 kg: over 18 kg, the museum's own figure",
        ),
        (
            LiftingChoices(two_people_above_kg=30.0, aid_above_kg=40.0),
            17_000,
            "Two people or a trolley.",
            "17.0 kg: over 16 kg for hands at waist height, close to the body",
        ),
    ],
    ids=["over own", "within own", "own aid", "own is milder"],
)
def test_of_place_and_own_figure_the_harsher_counts(
    choices: LiftingChoices, mass_g: float, advice: str, reason: str
) -> None:
    """A museum asks for more than the filter, never for less where the filter knows the place."""
    found = advise(weight(mass_g), box(900), choices)
    assert (found.advice, found.reason) == (advice, reason)


def test_twisting_and_lifting_often_are_said() -> None:
    """HSE: 60 degrees and 1.5 lifts a minute leave 63 % of 16 kg."""
    choices = LiftingChoices(twist_deg=60, lifts_per_min=1.5)
    found = advise(weight(10_100), box(900), choices)
    place = "for hands at waist height, close to the body"
    taken = "37 % already off for twisting or lifting often"
    assert found.reason == f"10.1 kg: over 10 kg {place}, {taken}"
    assert advise(weight(10_100), choices=choices).advice == "Two people or a trolley."
    assert advise(weight(10_000), choices=choices).advice == "At waist height, close to the body."


def test_higher_column() -> None:
    """The figures for men move the place's figure and the tiers of the weight alone."""
    choices = LiftingChoices(column=FilterColumn.HIGHER)
    assert advise(weight(24_000), box(900), choices).advice.startswith("One person: ")
    assert advise(weight(24_000), choices=choices).advice == "At waist height, close to the body."
    assert advise(weight(25_001), choices=choices).advice.startswith("Trolley")
