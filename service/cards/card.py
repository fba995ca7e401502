"""What each kind of card says."""

from __future__ import annotations

from dataclasses import dataclass, field

from service.cards.parts import CardLayer, CardObject, Handling, HazardGroup, Head, Warn
from service.handling.lifting import LiftAdvice
from service.records.measures import Grid


@dataclass(frozen=True, slots=True)
class LidCard:
    """The contents card on top of a container."""

    head: Head
    handling: Handling
    count_words: str
    layers: tuple[CardLayer, ...]
    grid: Grid | None
    orientation: str
    kind: str = field(default="lid-card", init=False)

    @property
    def objects(self) -> tuple[CardObject, ...]:
        """Every object, layer by layer."""
        return tuple(item for layer in self.layers for item in layer.objects)


@dataclass(frozen=True, slots=True)
class EndLabel:
    """The label on a short side, read from the aisle: the `side`th of `sides` alike."""

    head: Head
    lift: LiftAdvice
    marks: tuple[Warn, ...]
    count_words: str
    side: int
    sides: int
    kind: str = field(default="end-label", init=False)


@dataclass(frozen=True, slots=True)
class CoverCard:
    """The card tied to a garment cover, front and back of one fold."""

    head: Head
    handling: Handling
    main: CardObject
    others: tuple[CardObject, ...]
    object_name: str
    period: str
    hang_advice: str
    back_photo: str
    accessories: tuple[str, ...]
    notes: tuple[str, ...]
    hang_reason: str = ""
    kind: str = field(default="cover-card", init=False)


@dataclass(frozen=True, slots=True)
class ListEntry:
    """One row of the contents list, everything in full words."""

    place: str
    object_number: str
    title: str
    details: tuple[str, ...]
    hazards: tuple[str, ...]
    photo: str
    photo_words: str


@dataclass(frozen=True, slots=True)
class ContentsList:
    """The full table kept inside the container or in a binder."""

    head: Head
    lift: LiftAdvice
    count_words: str
    entries: tuple[ListEntry, ...]
    notes: tuple[str, ...]
    kind: str = field(default="contents-list", init=False)


@dataclass(frozen=True, slots=True)
class WarningLabel:
    """The labels that warn of each hazard of a container: one or more a group, all one set."""

    head: Head
    groups: tuple[HazardGroup, ...]
    kind: str = field(default="warning-label", init=False)


@dataclass(frozen=True, slots=True)
class SideCard:
    """The contents card for a side: where the lid is clear, or hidden on its shelf."""

    head: Head
    handling: Handling
    count_words: str
    layers: tuple[CardLayer, ...]
    kind: str = field(default="side-card", init=False)

    @property
    def objects(self) -> tuple[CardObject, ...]:
        """Every object, layer by layer."""
        return tuple(item for layer in self.layers for item in layer.objects)

    @property
    def orientation(self) -> str:
        """A side has no edge that faces the label."""
        return ""


@dataclass(frozen=True, slots=True)
class ShoulderTag:
    """The narrow tag that looks out from between garment covers on a crowded rail."""

    head: Head
    hazards: tuple[Warn, ...]
    objects: tuple[CardObject, ...]
    kind: str = field(default="shoulder-tag", init=False)


@dataclass(frozen=True, slots=True)
class ObjectTag:
    """The tag tied to one object: true wherever it lies, so it names neither box nor place.

    The head's container number is empty; its address is that of the object.
    """

    head: Head
    object_number: str
    former_numbers: tuple[str, ...]
    title: str
    lift: LiftAdvice
    hazards: tuple[Warn, ...]
    cautions: tuple[Warn, ...]
    kind: str = field(default="object-tag", init=False)


Card = (
    LidCard
    | EndLabel
    | CoverCard
    | ContentsList
    | WarningLabel
    | SideCard
    | ShoulderTag
    | ObjectTag
)
