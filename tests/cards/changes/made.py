"""Cards drawn at random through the real wording, and every card that differs in one field."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass, replace
from datetime import date
from typing import TYPE_CHECKING, cast

from hypothesis import strategies as st

from service.cards.card import Card, ContentsList
from service.cards.compose.asked.object_tag import compose_object_tags
from service.cards.compose.asked.shoulder_tag import compose_shoulder_tag
from service.cards.compose.asked.side_card import compose_side_card
from service.cards.compose.asked.warning_label import compose_warning_label
from service.cards.compose.contents_list import compose_contents_list
from service.cards.compose.cover_card import compose_cover_card
from service.cards.compose.end_label import compose_end_labels
from service.cards.compose.lid_card import compose_lid_card
from service.cards.parts import SecondWords
from service.contents.arrange import arrange_packings
from service.contents.packing import Packing
from service.records.measures import Grid
from service.records.record import (
    Collection,
    ContainerRecord,
    Hazard,
    HazardState,
    Museum,
    ObjectRecord,
    PackingRecord,
    Part,
    PhotoReference,
    PhotoRole,
    PlaceRecord,
    Questions,
    Weight,
)
from tests.contents.made import MUSEUM

SECRET = "Secret"  # noqa: S105 - a word in titles
"""Begins every text of an object that may not be named outside."""

NUMBERS = ("1987.412.9", "1987.412.10", "1931.14.7", "X.112")
PRIVATE = ("P.1", "P.2")
OUTER, INNER = "B-042", "B-042/1"

if TYPE_CHECKING:
    from _typeshed import DataclassInstance

Compose = Callable[[Packing, Museum], Card]
KINDS: dict[str, Compose] = {
    "lid-card": compose_lid_card,
    "end-label": lambda made, museum: compose_end_labels(made, museum)[0],
    "cover-card": compose_cover_card,
    "contents-list": compose_contents_list,
    "warning-label": compose_warning_label,
    "side-card": compose_side_card,
    "shoulder-tag": compose_shoulder_tag,
    "object-tag": lambda made, museum: compose_object_tags(made, museum)[0],
}

_states = st.sampled_from(HazardState)
_open_hazards = st.builds(
    Hazard,
    st.sampled_from(["arsenic", "lead", "odd-dust"]),
    _states,
    st.sampled_from(["", "dusty"]),
)
_private_hazards = st.builds(
    Hazard, st.sampled_from(["firearm", "human-remains", "restricted"]), _states
)
_cautions = st.sets(
    st.sampled_from(["fragile", "do-not-tilt", "keep-upright", "light-sensitive", "loose-parts"]),
    max_size=3,
).map(lambda codes: tuple(sorted(codes)))
_photos = st.lists(
    st.builds(PhotoReference, st.sampled_from(["a.jpg", "b.jpg"]), st.sampled_from(PhotoRole)),
    max_size=2,
).map(tuple)
_weights = st.none() | st.sampled_from([120.0, 3_400.0, 9_000.0]).map(Weight)
_texts = st.sampled_from(["", "Bait jar", "Bait jar, stoneware"])


@st.composite
def _records(draw: st.DrawFn, number: str) -> ObjectRecord:
    """Draw an object that differs in all that a card may show."""
    private = number in PRIVATE
    begin = f"{SECRET} " if private else ""
    hazards = draw(st.lists(_open_hazards, max_size=2, unique=True))
    if private:
        hazards += draw(st.lists(_private_hazards, min_size=1, max_size=1))
    return ObjectRecord(
        number,
        title=f"{begin}{draw(_texts)}",
        object_name=f"{begin}{draw(st.sampled_from(['jar', 'coat']))}",
        period=f"{begin}{draw(st.sampled_from(['1890s', '1920s']))}",
        parts=(Part("a", f"{begin}lid"), Part("b", f"{begin}jar")),
        accessories=(f"{begin}belt",) * draw(st.integers(0, 1)),
        weight=draw(_weights),
        condition=f"{begin}{draw(st.sampled_from(['stable', 'flaking']))}",
        hazards=tuple(hazards),
        cautions=draw(_cautions),
        photos=draw(_photos),
        restricted=private and draw(st.booleans()),
    )


@st.composite
def packings(draw: st.DrawFn) -> Packing:
    """Draw a container with at least one object, perhaps with another container inside."""
    numbers = (*NUMBERS, *PRIVATE)
    records = tuple(draw(_records(number)) for number in numbers)
    chosen = draw(st.lists(st.sampled_from(numbers), min_size=1, max_size=5))
    split = draw(st.integers(1, len(chosen)))
    places = [
        PlaceRecord(
            number,
            draw(st.sampled_from([(), ("a",), ("b",)])),
            draw(st.integers(1, 2)),
            draw(st.sampled_from(["", "A1", "B2"])),
            draw(st.sampled_from(["", "in tissue"])),
        )
        for number in chosen
    ]
    outer = ContainerRecord(
        OUTER,
        title=draw(st.sampled_from(["Small finds", "Jars"])),
        location=("Store 2", draw(st.sampled_from(["A1", "A2"]))),
        compartments=draw(st.none() | st.just(Grid(3, 2))),
        tare=draw(_weights),
        packing_materials=draw(st.sampled_from([(), ("acid-free board",)])),
        stacking_limit=draw(st.none() | st.integers(0, 1)),
        questions=Questions(draw(st.sampled_from(["", "Textiles desk"]))),
    )
    inner = ContainerRecord(INNER, title=draw(st.sampled_from(["", "Pins"])), inside=OUTER)
    collection = Collection(
        MUSEUM,
        records,
        (outer, inner),
        (
            PackingRecord(OUTER, draw(st.integers(1, 9)), tuple(places[:split]), "I. Hale"),
            PackingRecord(INNER, 1, tuple(places[split:])),
        ),
    )
    return next(
        packing
        for packing in arrange_packings(collection).packings
        if packing.container.container_number == OUTER
    )


def museums() -> st.SearchStrategy[Museum]:
    """Draw a museum that shows locations or hides them."""
    return st.booleans().map(lambda shown: replace(MUSEUM, show_location=shown))


@st.composite
def cards(draw: st.DrawFn) -> Card:
    """Draw a card of any kind."""
    compose = KINDS[draw(st.sampled_from(list(KINDS)))]
    return compose(draw(packings()), draw(museums()))


@st.composite
def card_pairs(draw: st.DrawFn) -> tuple[Card, Card]:
    """Draw a card as it was printed and the same card on another day."""
    compose = KINDS[draw(st.sampled_from(list(KINDS)))]
    return (compose(draw(packings()), draw(museums())), compose(draw(packings()), draw(museums())))


def vary(card: Card) -> Iterator[tuple[str, Card]]:
    """Give every card that differs from this one in a single field, and the way to the field."""
    return ((path, cast("Card", value)) for path, value in _vary(card, type(card).__name__))


def _vary(value: object, path: str) -> Iterator[tuple[str, object]]:
    if isinstance(value, str):
        yield path, f"{value}!"
        yield from [(path, "")] if value else []
    elif isinstance(value, int):
        yield path, value + 1
    elif value is None:
        given = {"grid": Grid(7, 7), "second": SecondWords("cy", (("Lead", "Plwm"),))}
        yield path, given.get(path.rpartition(".")[2], (7, 7))
    elif isinstance(value, tuple):
        yield from _vary_tuple(value, path)
    elif is_dataclass(value) and not isinstance(value, type):
        yield from _vary_fields(value, path)


def _vary_fields(value: DataclassInstance, path: str) -> Iterator[tuple[str, object]]:
    for each in fields(value):
        if each.init:
            for inner, other in _vary(getattr(value, each.name), f"{path}.{each.name}"):
                yield inner, replace(value, **{each.name: other})


def _vary_tuple(values: tuple[object, ...], path: str) -> Iterator[tuple[str, object]]:
    """Change each value; leave out, repeat and turn round, where the length may change."""
    for index, value in enumerate(values):
        for inner, other in _vary(value, f"{path}[]"):
            yield inner, (*values[:index], other, *values[index + 1 :])
    if path.endswith((".cell", ".marks[]")):
        return
    if values:
        yield path, values[1:]
        yield path, (*values, values[0])
    if values[::-1] != values:
        yield path, values[::-1]


def listed(number: str = "1987.412.9", **changes: object) -> ContentsList:
    """Compose the contents list of one object."""
    record = replace(ObjectRecord(number, "Bait jar"), **changes)  # type: ignore[arg-type]
    place = PlaceRecord(number)
    packing = PackingRecord(OUTER, 3, (place,), "I. Hale", date(2026, 10, 14))
    made = arrange_packings(Collection(MUSEUM, (record,), (ContainerRecord(OUTER),), (packing,)))
    return compose_contents_list(made.packings[0], MUSEUM)
