"""A packing: one numbered, immutable state of a container's contents."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from service.records.record import ContainerRecord, ObjectRecord, PlaceRecord


@dataclass(frozen=True, slots=True)
class PackedObject:
    """An object, or named parts of it, at its place.

    `known` is False where the packing names an object that is not in the records. `elsewhere`
    says where the parts lie that are not here: pairs of parts and container number.
    """

    record: ObjectRecord
    place: PlaceRecord
    known: bool = True
    elsewhere: tuple[tuple[tuple[str, ...], str], ...] = ()


@dataclass(frozen=True, slots=True)
class Layer:
    """One level of contents: `number` 1 is the top."""

    number: int
    contents: tuple[PackedObject, ...]


@dataclass(frozen=True, slots=True)
class Packing:
    """What one container holds, in layers from the top, and the containers that lie in it."""

    container: ContainerRecord
    revision: int
    layers: tuple[Layer, ...]
    nested: tuple[Packing, ...] = ()
    packed_by: str = ""
    packed_on: date | None = None
    reason: str = ""

    @property
    def contents(self) -> tuple[PackedObject, ...]:
        """Every object that lies directly in the container, layer by layer."""
        return tuple(packed for layer in self.layers for packed in layer.contents)

    @property
    def everything(self) -> tuple[PackedObject, ...]:
        """Every object in the container, those of nested containers last."""
        inner = (packed for packing in self.nested for packed in packing.everything)
        return (*self.contents, *inner)
