"""Lifting advice never gets milder when a lift gets worse."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from service.contents.weights import Certainty, ContainerWeight
from service.geometry import Size
from service.handling.lifting import advise_lift
from service.handling.lifting.effort import ADVICE, Effort
from service.handling.lifting.hse import Zone, find_zone
from service.records.museum.lifting import Duration, FilterColumn, LiftingChoices, LiftMethod
from service.records.record import ContainerKind, ContainerRecord

# How bad the zones are: of no two neighbours in this order has the later the larger figure.
BADNESS = {
    Zone.ELBOW_TO_KNUCKLE: 0,
    Zone.SHOULDER_TO_ELBOW: 1,
    Zone.KNUCKLE_TO_SHIN: 1,
    Zone.ABOVE_SHOULDER: 2,
    Zone.BELOW_SHIN: 2,
}

weights_kg = st.floats(0.01, 60) | st.sampled_from([3.0, 7.0, 13.0, 16.0, 25.0])
heights_mm = st.floats(0, 2500) | st.sampled_from([300.0, 750.0, 825.0, 930.0, 1215.0, 1750.0])
twists_deg = st.floats(0, 180) | st.sampled_from([45.0, 90.0, 135.0])
rates_per_min = st.floats(0, 20) | st.sampled_from([0.5, 2.0, 8.0, 12.0, 15.0])
sides_mm = st.floats(50, 1600)
own_kg = st.none() | st.floats(0.5, 40)
choices = st.builds(
    LiftingChoices,
    st.sampled_from(LiftMethod),
    st.sampled_from(FilterColumn),
    twists_deg,
    rates_per_min,
    st.sampled_from(Duration),
    own_kg,
    own_kg,
    own_kg,
    own_kg,
).filter(lambda each: each.tiers().rise)
containers = st.builds(
    lambda kind, height_mm, width_mm, depth_mm: ContainerRecord(
        "B-1",
        kind,
        hand_height_mm=height_mm,
        lid_size=Size(width_mm, depth_mm),
        end_size=Size(width_mm, 250.0),
    ),
    st.sampled_from(ContainerKind),
    st.none() | heights_mm,
    sides_mm,
    sides_mm,
)


def effort(mass_kg: float, container: ContainerRecord, chosen: LiftingChoices) -> Effort:
    """Give how much the advice asks, read from its words."""
    weight = ContainerWeight(mass_kg * 1000, Certainty.MEASURED, 0, 1, tare_known=True)
    words = advise_lift(weight, container, chosen).advice.removeprefix("One person: ")
    (found,) = (each for each, said in ADVICE.items() if said.casefold() == words.casefold())
    return found


@given(containers, choices, weights_kg, weights_kg)
def test_more_weight_asks_for_no_less(
    container: ContainerRecord, chosen: LiftingChoices, one_kg: float, other_kg: float
) -> None:
    """Of two weights of one container the heavier never gets the milder advice."""
    light_kg, heavy_kg = sorted((one_kg, other_kg))
    assert effort(light_kg, container, chosen) <= effort(heavy_kg, container, chosen)


@given(containers, choices, weights_kg, twists_deg, twists_deg)
def test_more_twist_asks_for_no_less(
    container: ContainerRecord,
    chosen: LiftingChoices,
    mass_kg: float,
    one_deg: float,
    other_deg: float,
) -> None:
    """Turning further never gets the milder advice."""
    little, much = (replace(chosen, twist_deg=deg) for deg in sorted((one_deg, other_deg)))
    assert effort(mass_kg, container, little) <= effort(mass_kg, container, much)


@given(containers, choices, weights_kg, rates_per_min, rates_per_min)
def test_more_lifts_ask_for_no_less(
    container: ContainerRecord, chosen: LiftingChoices, mass_kg: float, one: float, other: float
) -> None:
    """Lifting more often never gets the milder advice."""
    seldom, often = (replace(chosen, lifts_per_min=rate) for rate in sorted((one, other)))
    assert effort(mass_kg, container, seldom) <= effort(mass_kg, container, often)


@given(containers, choices, weights_kg, heights_mm, heights_mm)
def test_a_worse_zone_asks_for_no_less(
    container: ContainerRecord,
    chosen: LiftingChoices,
    mass_kg: float,
    one_mm: float,
    other_mm: float,
) -> None:
    """By the filter, hands in a worse zone never get the milder advice."""
    better_mm, worse_mm = sorted((one_mm, other_mm), key=lambda mm: BADNESS[find_zone(mm)])
    by_filter = replace(chosen, method=LiftMethod.HSE)
    better, worse = (replace(container, hand_height_mm=mm) for mm in (better_mm, worse_mm))
    assert effort(mass_kg, better, by_filter) <= effort(mass_kg, worse, by_filter)


@given(containers, choices, weights_kg, sides_mm, sides_mm)
def test_a_deeper_box_asks_for_no_less(
    container: ContainerRecord,
    chosen: LiftingChoices,
    mass_kg: float,
    one_mm: float,
    other_mm: float,
) -> None:
    """By either method a deeper container never gets the milder advice."""
    shallow, deep = (replace(container, lid_size=Size(50, mm)) for mm in sorted((one_mm, other_mm)))
    assert effort(mass_kg, shallow, chosen) <= effort(mass_kg, deep, chosen)


@given(containers, choices, weights_kg, st.floats(50, 860))
def test_an_unknown_size_asks_for_no_less(
    container: ContainerRecord, chosen: LiftingChoices, mass_kg: float, depth_mm: float
) -> None:
    """What nobody measured is reckoned as far out as the equation reaches, 860 mm deep."""
    known = replace(container, lid_size=Size(50, depth_mm))
    unknown = replace(container, lid_size=None)
    assert effort(mass_kg, known, chosen) <= effort(mass_kg, unknown, chosen)
