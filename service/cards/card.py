"""The parts that every kind of card is made of, and the cards themselves."""

from __future__ import annotations

from dataclasses import dataclass, field

from service.handling.lifting import LiftAdvice
from service.records.record import Grid


@dataclass(frozen=True, slots=True)
class Pointer:
    """An object as a warning names it: its place in the container, if any, and its number."""

    place: str
    object_number: str


@dataclass(frozen=True, slots=True)
class Warn:
    """One mark with its words; `instruction` is empty for a caution that says it all by name.

    `unmarked` are those of `pointers` beside which the mark does not stand: they are named whatever
    their number.
    """

    mark: str
    heading: str
    instruction: str = ""
    pointers: tuple[Pointer, ...] = ()
    urgency: int = 2
    unmarked: tuple[Pointer, ...] = ()


@dataclass(frozen=True, slots=True)
class Handling:
    """What must be known before lifting or opening, most urgent first."""

    lift: LiftAdvice
    hazards: tuple[Warn, ...] = ()
    cautions: tuple[Warn, ...] = ()
    limits: tuple[str, ...] = ()
    """Limits of the container itself: stacking, heavy end, temporary materials."""


@dataclass(frozen=True, slots=True)
class CardObject:
    """One object as the outside of a container shows it.

    `place` is the tag printed with it ("B3"), `cell` its column and row from 0 in the container's
    grid. `photo` is empty where there is none or where it may not be shown; `photo_words` then
    stands in the frame. `aside` says where other parts lie. Marks are pairs of mark and words.
    """

    object_number: str
    title: str
    photo: str
    photo_words: str
    place: str = ""
    cell: tuple[int, int] | None = None
    aside: str = ""
    marks: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class CardLayer:
    """A layer with its heading; the heading is empty where there is only one."""

    heading: str
    objects: tuple[CardObject, ...]


@dataclass(frozen=True, slots=True)
class Head:
    """What every card of a container carries at its head and foot.

    `address` is what the symbol says without its query; `query` holds revision and letters where
    the card is one that goes out of date. `questions` says whom to ask. `packed` and `revision`
    belong to the packing, not to what the card says.
    """

    container_number: str
    kind_words: str
    title: str
    museum: str
    location: str
    address: str
    questions: str
    revision: int
    packed: str = ""
    query: str = ""
    check_letters: str = ""


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


Card = LidCard | EndLabel | CoverCard | ContentsList
