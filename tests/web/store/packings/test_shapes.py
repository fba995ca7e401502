from __future__ import annotations

import pytest
from pydantic import ValidationError

from service.records.record import PlaceRecord
from service.web.store.packings.shapes import PutInBody


@pytest.mark.parametrize(
    "place", [PlaceRecord(" "), PlaceRecord("X.112", layer=0)], ids=["no object", "no layer"]
)
def test_a_place_no_object_can_have_is_refused(place: PlaceRecord) -> None:
    """It must name an object, and layers are counted from 1."""
    assert PutInBody(place=PlaceRecord("X.112")).reason == ""
    with pytest.raises(ValidationError):
        PutInBody(place=place)
