from __future__ import annotations

import pytest

from service.geometry import Size
from service.handling.lifting.hold import deepest_mm, find_grip, find_reach, measure_depth_mm
from service.handling.lifting.hse import Reach
from service.handling.lifting.niosh import Grip
from service.records.measures import Measure
from service.records.record import ContainerKind, ContainerRecord

INNER = (Measure("", 590.0), Measure("", 440.0), Measure("height", 900.0))


@pytest.mark.parametrize(
    ("container", "depth_mm", "reach"),
    [
        (ContainerRecord("B", lid_size=Size(300, 400)), 400, Reach.CLOSE),
        (ContainerRecord("B", lid_size=Size(401, 300)), 401, Reach.ARMS_OUT),
        (ContainerRecord("B", inner_dimensions=INNER), 590, Reach.ARMS_OUT),
        (ContainerRecord("B"), None, Reach.ARMS_OUT),
        (
            ContainerRecord("G", ContainerKind.GARMENT_COVER, lid_size=Size(620, 1550)),
            400,
            Reach.CLOSE,
        ),
    ],
    ids=["small", "a little deeper", "inner size", "not recorded", "hanging"],
)
def test_depth_decides_the_reach(
    container: ContainerRecord, depth_mm: float | None, reach: Reach
) -> None:
    """Up to 400 mm is close; what is not recorded is at arm's length."""
    assert measure_depth_mm(container) == depth_mm
    assert find_reach(container) is reach


def test_unknown_depth_reaches_as_far_as_the_equation() -> None:
    """20 cm and half of 86 cm are the 63 cm beyond which NIOSH recommends nothing."""
    assert deepest_mm(ContainerRecord("B")) == 860
    assert deepest_mm(ContainerRecord("B", lid_size=Size(300, 410))) == 410


@pytest.mark.parametrize(
    ("lid", "end", "grip"),
    [
        (Size(300, 400), Size(300, 300), Grip.FAIR),
        (Size(300, 401), Size(300, 300), Grip.POOR),
        (Size(300, 400), Size(300, 301), Grip.POOR),
        (Size(300, 400), None, Grip.POOR),
        (None, Size(300, 300), Grip.POOR),
    ],
    ids=["small", "long", "high", "no end", "no lid"],
)
def test_grip_by_size(lid: Size | None, end: Size | None, grip: Grip) -> None:
    """NIOSH 94-110, pp. 17 and 18: fair up to 40 cm long and 30 cm high, else poor."""
    assert find_grip(ContainerRecord("B", lid_size=lid, end_size=end)) is grip
