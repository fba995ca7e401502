"""The records of the benchmark, the same on every machine: made from a seed, never stored."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from dataclasses import asdict, dataclass
from random import Random

from tests.benchmarks.content.words import (
    ADDRESS,
    ADJECTIVES,
    COLLECTIONS,
    FOREIGN_NOTES,
    LANGUAGES,
    NOTES,
    NOUNS,
    PACKERS,
    TITLES,
    WARNINGS,
)

OBJECTS_A_CARD = 8
PICTURES = 1600
"""Distinct pictures: those of 200 cards, which come again on further cards."""
FACTS = (("Weight", "weight"), ("Location", "location"), ("Packed", "packed"), ("By", "by"))


@dataclass(frozen=True, slots=True)
class Item:
    """One object; `picture` is the number of its photo."""

    number: str
    title: str
    note: str
    language: str
    picture: int


@dataclass(frozen=True, slots=True)
class Warn:
    """A pictogram by its code, with its words."""

    mark: str
    head: str
    text: str


@dataclass(frozen=True, slots=True)
class Card:
    """A rich card for the lid of a box."""

    number: str
    title: str
    subtitle: str
    weight: str
    location: str
    packed: str
    by: str
    warnings: tuple[Warn, ...]
    address: str
    items: tuple[Item, ...]

    @property
    def facts(self) -> tuple[tuple[str, str], ...]:
        """The four lines beside the pictures, each with its heading."""
        return tuple((heading, str(getattr(self, name))) for heading, name in FACTS)


@dataclass(frozen=True, slots=True)
class Label:
    """A small label for one object."""

    number: str
    title: str
    note: str
    language: str
    address: str


Record = Card | Label


def make_cards(count: int) -> list[Card]:
    """Make the first `count` cards; no two say the same."""
    chance = Random(7)  # noqa: S311 - the same texts every time
    return [_card(chance, index) for index in range(count)]


def make_labels(count: int) -> list[Label]:
    """Make the first `count` labels; no two say the same."""
    chance = Random(11)  # noqa: S311 - the same texts every time
    return [_label(chance, index) for index in range(count)]


def digest_of(records: Iterable[Record]) -> str:
    """Give the SHA-256 of everything the records say."""
    digest = hashlib.sha256()
    for record in records:
        digest.update(repr(asdict(record)).encode())
    return digest.hexdigest()


def _item(chance: Random, index: int) -> Item:
    language = chance.choice(LANGUAGES)
    number = f"{chance.randint(1902, 2023)}.{chance.randint(1, 199)}.{index:04d}"
    if language == "en":
        title = f"{chance.choice(ADJECTIVES)} {chance.choice(NOUNS)}"
        title = title[0].upper() + title[1:] + _period(chance)
        return Item(number, title, chance.choice(NOTES), language, index % PICTURES)
    title, note = chance.choice(TITLES[language]), chance.choice(FOREIGN_NOTES[language])
    return Item(number, title, note, language, index % PICTURES)


def _period(chance: Random) -> str:
    """Give half of the English titles a period, which takes them to a second line."""
    if chance.random() < 0.5:
        return ""
    return f", {chance.choice(('about', 'before', 'after'))} {chance.randint(1690, 1950)}"


def _card(chance: Random, index: int) -> Card:
    first = index * OBJECTS_A_CARD
    items = tuple(_item(chance, first + k) for k in range(OBJECTS_A_CARD))
    shelf = f"S{chance.randint(1, 40):02d} · {chance.choice('ABCDEF')}"
    return Card(
        number=f"{'ABCDEFGH'[index % 8]}-{index + 101:04d}",
        title=COLLECTIONS[index % 8],
        subtitle=f"Tray {index % 5 + 1} of 5, objects {first + 1} to {first + OBJECTS_A_CARD}",
        weight=f"{chance.uniform(0.6, 18):.1f} kg",
        location=f"R{chance.randint(1, 4)} · {shelf}",
        packed=f"2026-{chance.randint(1, 12):02d}-{chance.randint(1, 28):02d}",
        by=chance.choice(PACKERS),
        warnings=tuple(Warn(*words) for words in chance.sample(WARNINGS, 3)),
        address=f"{ADDRESS}/c/{index + 101:04d}?k={chance.getrandbits(40):010x}",
        items=items,
    )


def _label(chance: Random, index: int) -> Label:
    item = _item(chance, index)
    address = f"{ADDRESS}/o/{index:05d}?k={chance.getrandbits(32):08x}"
    return Label(item.number, item.title, item.note, item.language, address)
