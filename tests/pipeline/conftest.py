"""One workshop and small collections for the tests of the main job."""

from __future__ import annotations

import io
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from PIL import Image, ImageDraw

from service.geometry import Size
from service.pipeline.ready import Workshop
from service.records.record import (
    Collection,
    ContainerRecord,
    Hazard,
    HazardState,
    Museum,
    ObjectRecord,
    PackingRecord,
    PhotoReference,
    PlaceRecord,
    Questions,
)
from service.wiring import open_workshop


@pytest.fixture(scope="session")
def workshop(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Workshop]:
    """Open a workshop with one child process for the whole session."""
    folder: Path = tmp_path_factory.mktemp("data")
    with open_workshop(folder, processes=1) as opened:
        yield opened


def make_photo(colour: str, size_px: tuple[int, int] = (900, 600)) -> bytes:
    """Draw a plain object on grey as a JPEG."""
    image = Image.new("RGB", size_px, "#909090")
    width_px, height_px = size_px
    box = (width_px // 3, height_px // 4, width_px * 2 // 3, height_px * 3 // 4)
    ImageDraw.Draw(image).ellipse(box, fill=colour)
    stream = io.BytesIO()
    image.save(stream, "JPEG")
    return stream.getvalue()


@pytest.fixture
def collection() -> Collection:
    """Give one box with two objects, one of them with a photo and a hazard."""
    objects = (
        ObjectRecord(
            "1987.412.9",
            "Sounding lead",
            photos=(PhotoReference("lead.jpg"),),
            hazards=(Hazard("lead", HazardState.PRESUMED),),
        ),
        ObjectRecord("1987.412.10", "Bait jar"),
    )
    places = (PlaceRecord("1987.412.9"), PlaceRecord("1987.412.10"))
    return Collection(
        museum=Museum(
            name="Port Merrow Museum",
            container_address="https://collections.portmerrow.example/c/{container_number}",
            questions=Questions("Collections desk", "555 0142"),
        ),
        objects=objects,
        containers=(
            ContainerRecord("B-1", title="Tools", lid_size=Size(300, 200), end_size=Size(200, 100)),
        ),
        packings=(PackingRecord("B-1", 2, places),),
    )


@pytest.fixture
def photos() -> dict[str, bytes]:
    """Give the photo the collection names."""
    return {"lead.jpg": make_photo("#303030")}


def with_title(collection: Collection, title: str) -> Collection:
    """Give the same collection with another title of its first object."""
    first, *others = collection.objects
    return replace(collection, objects=(replace(first, title=title), *others))
