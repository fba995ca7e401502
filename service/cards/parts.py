"""The parts that cards of every kind are made of."""

from __future__ import annotations

from dataclasses import dataclass

from service.handling.lifting import LiftAdvice


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
class WarnedObject:
    """An object with a hazard: where it lies, how much is known of the hazard, and since when.

    `checked` is empty where nothing was checked; it names date, method, who, and the review.
    """

    place: str
    object_number: str
    title: str
    state: str
    checked: str = ""


@dataclass(frozen=True, slots=True)
class HazardGroup:
    """One hazard of a container and every object that has it, best known first.

    `ask` is who can help with this hazard, `protection` what is worn near it. A hazard that may not
    be announced names neither.
    """

    mark: str
    name: str
    instruction: str
    ask: str = ""
    objects: tuple[WarnedObject, ...] = ()
    protection: str = ""

    @property
    def headings(self) -> tuple[str, ...]:
        """The name with each state in which it is known, best known first; else the name."""
        states = dict.fromkeys(item.state for item in self.objects)
        return tuple(f"{self.name} {state}" for state in states) or (self.name,)


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
class SecondWords:
    """What a card says in a second language: pairs of the English words and those beside them.

    `note` says what is to be known of the translation where the card has room for that.
    """

    language: str
    words: tuple[tuple[str, str], ...]
    note: str = ""

    def beside(self, *english: str) -> str:
        """Give what stands beside English words, empty where there is nothing."""
        said = dict(self.words)
        return ". ".join(said[words] for words in english if words in said)


@dataclass(frozen=True, slots=True)
class Head:
    """What every card of a container carries at its head and foot.

    `address` is what the symbol says without its query; `query` holds revision and letters where
    the card is one that goes out of date. `questions` says whom to ask. `packed` and `revision`
    belong to the packing, not to what the card says. `second` is None where a card speaks English
    alone.
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
    second: SecondWords | None = None
