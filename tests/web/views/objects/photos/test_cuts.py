from __future__ import annotations

import pytest

from service.records.photos.edit import make_crop
from service.web.views.objects.photos.cuts import read_cuts, write_cuts


def test_cuts_are_read_as_written() -> None:
    """A crop goes there and back; the whole photo has nothing cut away."""
    crop = make_crop((0.1, 0.0, 0.875, 0.5))
    assert write_cuts(crop) == {"left": "10", "top": "0", "right": "12.5", "bottom": "50"}
    ratios, faults = read_cuts(write_cuts(crop))
    assert faults == {}
    assert make_crop(ratios) == crop
    assert write_cuts(None) == dict.fromkeys(("left", "top", "right", "bottom"), "0")
    assert read_cuts({}) == ((0, 0, 1, 1), {})


@pytest.mark.parametrize(
    ("typed", "edge"),
    [
        ({"left": "x"}, "left"),
        ({"top": "-1"}, "top"),
        ({"bottom": "100"}, "bottom"),
        ({"right": "nan"}, "right"),
        ({"left": "60", "right": "40"}, "right"),
        ({"top": "60", "bottom": "50"}, "bottom"),
    ],
)
def test_what_cannot_be_cut_is_told(typed: dict[str, str], edge: str) -> None:
    """At the edge that it concerns; per cent signs and commas are understood."""
    assert read_cuts(typed)[1].keys() == {edge}
    assert read_cuts({"left": "12,5 %"})[0][0] == 0.125
