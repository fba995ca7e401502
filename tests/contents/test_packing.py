from __future__ import annotations

from dataclasses import replace

from service.records.record import ContainerRecord, PlaceRecord
from tests.contents.made import objects, packing


def test_contents_run_layer_by_layer_from_the_top() -> None:
    """What lies directly in the container comes in the order in which hands meet it."""
    places = [PlaceRecord("1987.412.1", layer=2), PlaceRecord("1987.412.2", layer=1)]
    made = packing(objects(2), places=places)
    assert [layer.number for layer in made.layers] == [1, 2]
    numbers = [item.record.object_number for item in made.contents]
    assert numbers == ["1987.412.2", "1987.412.1"]


def test_everything_ends_with_what_lies_in_nested_containers() -> None:
    """Objects two containers down are in the container too, after its own."""
    inmost = packing(objects(3)[2:], ContainerRecord("T-2"))
    inner = replace(packing(objects(2)[1:], ContainerRecord("T-1")), nested=(inmost,))
    outer = replace(packing(objects(1)), nested=(inner,))
    numbers = [item.record.object_number for item in outer.everything]
    assert numbers == ["1987.412.1", "1987.412.2", "1987.412.3"]
    assert len(outer.contents) == 1
