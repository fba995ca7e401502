"""The revised NIOSH lifting equation against the manual's worked examples and other check values.

*Applications Manual for the Revised NIOSH Lifting Equation*, DHHS (NIOSH) 94-110, revised 9/2021,
figures read in texts that restate it. Its examples are in inches and pounds with constants of their
own, which are no exact conversion, so they stand here and the equation takes them.
"""

from __future__ import annotations

from dataclasses import astuple
from decimal import ROUND_HALF_UP, Decimal

import pytest

from service.handling.lifting.niosh import (
    METRIC,
    Constants,
    Grip,
    Lift,
    Multipliers,
    find_index,
    find_multipliers,
    recommend_kg,
    weigh_rate,
)
from service.records.museum.lifting import Duration
from service.units import grams_from_mass, kg_from_grams, mm_from_inches

POUND_KG = kg_from_grams(grams_from_mass(1000, unit="lb")) / 1000

# 51 lb, 10/H, 1 - .0075 abs(V - 30), .82 + 1.8/D; H up to 25 in, V up to 70 in, D 10 to 70 in.
US = Constants(
    load_kg=51 * POUND_KG,
    reach_mm=mm_from_inches(10),
    most_reach_mm=mm_from_inches(25),
    neutral_mm=mm_from_inches(30),
    per_mm_ratio=0.0075 / mm_from_inches(1),
    most_height_mm=mm_from_inches(70),
    travel_mm=mm_from_inches(1.8),
    least_travel_mm=mm_from_inches(10),
    most_travel_mm=mm_from_inches(70),
)


def us_lift(
    reach_in: float, height_in: float, travel_in: float, *, twist_deg: float, rate: float
) -> Lift:
    """Make a lift of up to an hour with a fair grip from measures in inches."""
    reach_mm, height_mm, travel_mm = map(mm_from_inches, (reach_in, height_in, travel_in))
    return Lift(reach_mm, height_mm, travel_mm, twist_deg, rate, Duration.SHORT, Grip.FAIR)


PACKAGE_ORIGIN = us_lift(10, 22, 37, twist_deg=0, rate=3)
PACKAGE_END = us_lift(20, 59, 37, twist_deg=0, rate=3)
HOPPER = us_lift(18, 15, 21, twist_deg=45, rate=0.2)
EXAMPLES = ("package, origin", "package, destination", "bags into a hopper")


def printed(multipliers: Multipliers) -> tuple[str, ...]:
    """Round as the manual prints: to two places, ties upwards."""
    return tuple(
        str(Decimal(f"{value:.9f}").quantize(Decimal("0.01"), ROUND_HALF_UP))
        for value in astuple(multipliers)
    )


@pytest.mark.parametrize(
    ("lift", "multipliers", "rounded_lb", "full_lb"),
    [
        # Example 4, p. 46 and figure 14.
        (PACKAGE_ORIGIN, ("1.00", "0.94", "0.87", "1.00", "0.88", "0.95"), 34.9, 34.81),
        (PACKAGE_END, ("0.50", "0.78", "0.87", "1.00", "0.88", "1.00"), 15.2, 15.25),
        # Example 3, pp. 41 to 43; inputs and result from memory.
        (HOPPER, ("0.56", "0.89", "0.91", "0.86", "1.00", "0.95"), 18.9, 18.52),
    ],
    ids=EXAMPLES,
)
def test_worked_examples(
    lift: Lift, multipliers: tuple[str, ...], rounded_lb: float, full_lb: float
) -> None:
    """NIOSH 94-110, examples 4 and 3: each multiplier, and the limit rounded and in full."""
    found = find_multipliers(lift, US)
    assert printed(found) == multipliers
    rounded = Decimal(51)
    for value in printed(found):
        rounded *= Decimal(value)
    assert float(rounded) == pytest.approx(rounded_lb, abs=0.05)
    assert recommend_kg(lift, US) / POUND_KG == pytest.approx(full_lb, abs=0.005)


@pytest.mark.parametrize(
    ("lift", "load_lb", "index"),
    [(PACKAGE_ORIGIN, 26, 0.747), (PACKAGE_END, 26, 1.705), (HOPPER, 40, 2.160)],
    ids=EXAMPLES,
)
def test_lifting_index(lift: Lift, load_lb: float, index: float) -> None:
    """NIOSH 94-110, the same examples: the load over the limit; loads from memory."""
    found = find_index(load_lb * POUND_KG, recommend_kg(lift, US))
    assert found == pytest.approx(index, abs=0.0005)


@pytest.mark.parametrize(("lifts_per_min", "left_ratio"), [(16 / 3, 0.7833), (2.4, 0.898)])
def test_between_rows_of_table_5(lifts_per_min: float, left_ratio: float) -> None:
    """NIOSH 94-110, p. 7: linear interpolation, for up to an hour."""
    found = weigh_rate(lifts_per_min, Duration.SHORT, high=False)
    assert found == pytest.approx(left_ratio, abs=0.0005)


# Lifts a minute; up to one, two and eight hours, each below 75 cm and from there up.
TABLE_5 = """
 0.2  1.00 1.00  .95  .95  .85  .85
 0.5   .97  .97  .92  .92  .81  .81
 1     .94  .94  .88  .88  .75  .75
 2     .91  .91  .84  .84  .65  .65
 3     .88  .88  .79  .79  .55  .55
 4     .84  .84  .72  .72  .45  .45
 5     .80  .80  .60  .60  .35  .35
 6     .75  .75  .50  .50  .27  .27
 7     .70  .70  .42  .42  .22  .22
 8     .60  .60  .35  .35  .18  .18
 9     .52  .52  .30  .30    0  .15
10     .45  .45  .26  .26    0  .13
11     .41  .41    0  .23    0    0
12     .37  .37    0  .21    0    0
13       0  .34    0    0    0    0
14       0  .31    0    0    0    0
15       0  .28    0    0    0    0
15.01    0    0    0    0    0    0
"""


@pytest.mark.parametrize("row", TABLE_5.strip().splitlines(), ids=lambda row: row.split()[0])
def test_table_5(row: str) -> None:
    """NIOSH 94-110, table 5: every row for three durations and two heights."""
    rate, *left = map(float, row.split())
    found = [weigh_rate(rate, day, high=high) for day in Duration for high in (False, True)]
    assert found == left


@pytest.mark.parametrize(
    ("grip", "below_ratio", "above_ratio"),
    [(Grip.GOOD, 1.0, 1.0), (Grip.FAIR, 0.95, 1.0), (Grip.POOR, 0.9, 0.9)],
)
def test_table_7(grip: Grip, below_ratio: float, above_ratio: float) -> None:
    """NIOSH 94-110, table 7: three grips, below 75 cm and from 75 cm up."""
    found = [
        find_multipliers(Lift(250, height_mm, 250, 0, 0.2, Duration.SHORT, grip)).grip_ratio
        for height_mm in (749, 750)
    ]
    assert found == [below_ratio, above_ratio]


def test_product() -> None:
    """CCOHS, frequency multiplier: 23 kg times six multipliers are 1.974 kg; LI 5.1 for 10 kg."""
    found_kg = METRIC.load_kg * Multipliers(1.00, 0.93, 1.00, 0.71, 0.13, 1.00).product
    assert found_kg == pytest.approx(1.974, abs=0.0005)
    assert find_index(10, found_kg) == pytest.approx(5.07, abs=0.05)


@pytest.mark.parametrize(
    ("lift", "limit_kg", "load_kg", "index"),
    [
        (Lift(400, 400, 600, 0, 0.2, Duration.LONG, Grip.FAIR), 9.30, 12, 1.291),
        (Lift(350, 1500, 750, 0, 0.2, Duration.LONG, Grip.FAIR), 9.52, 15, 1.575),
    ],
    ids=["low", "high"],
)
def test_metric(lift: Lift, limit_kg: float, load_kg: float, index: float) -> None:
    """The metric equation of NIOSH 94-110, p. 7, reckoned by hand for two boxes of a store."""
    assert recommend_kg(lift) == pytest.approx(limit_kg, abs=0.005)
    assert find_index(load_kg, recommend_kg(lift)) == pytest.approx(index, abs=0.0005)
