"""Tests for telling what changed in the head of a card and in the fields of its kind."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.changes.change import Change, ChangeKind, Urgency
from service.records.measures import Grid
from service.records.record import (
    Collection,
    Hazard,
    HazardState,
    ObjectRecord,
    PhotoReference,
    PhotoRole,
    PlaceRecord,
    Questions,
)
from tests.cards.changes.cases import (
    BOX,
    JAR,
    LEAD,
    PLACES,
    changed,
    collection,
    compare,
    words,
)
from tests.contents.made import MUSEUM

OPEN = replace(MUSEUM, show_location=True)

HEAD = {
    "container title": (
        collection(box=replace(BOX, title="Finds")),
        "container title changed from 'Small finds' to 'Finds'",
    ),
    "museum": (
        collection(museum=replace(MUSEUM, name="Harbour Museum")),
        f"name of the museum changed from '{MUSEUM.name}' to 'Harbour Museum'",
    ),
    "address": (
        collection(
            museum=replace(
                MUSEUM, container_address="https://portmerrow.example/{container_number}"
            )
        ),
        (
            "address in the symbol changed from 'https://collections.example/c/B-042'"
            " to 'https://portmerrow.example/B-042'"
        ),
    ),
    "whom to ask": (
        collection(box=replace(BOX, questions=Questions("Textiles desk"))),
        "Textiles desk",
    ),
}


@pytest.mark.parametrize("kind", ["lid", "end", "list"])
@pytest.mark.parametrize(("after", "reason"), HEAD.values(), ids=HEAD)
def test_the_head_is_compared(kind: str, after: Collection, reason: str) -> None:
    """Every kind of card tells what changed in what all of them carry."""
    (change,) = compare(kind, collection(), after)
    assert reason in change.words
    assert change.urgency is Urgency.WORDING


def test_a_location_is_told_only_inside() -> None:
    """Where the museum prints locations a move is told, but not on paper that anybody sees."""
    before = collection(museum=OPEN, box=replace(BOX, location=("Store 2", "Bay 4")))
    after = collection(museum=OPEN, box=replace(BOX, location=("Store 3",)))
    (change,) = compare("lid", before, after)
    assert change.words == "location changed from 'Store 2, Bay 4' to 'Store 3'"
    assert change.outside_words == "location changed"


def test_a_location_that_is_not_printed_makes_no_card_wrong() -> None:
    """A container that moves keeps its cards where they say nothing of the place."""
    assert words("lid", collection(box=replace(BOX, location=("Store 3",)))) == []


def test_compartments_are_told() -> None:
    """Another map of compartments is another card."""
    one = (PlaceRecord("1987.412.9", compartment="A1"),)
    before = collection(places=one, box=replace(BOX, compartments=Grid(2, 2)))
    after = collection(places=one, box=replace(BOX, compartments=Grid(3, 2)))
    (change,) = compare("lid", before, after)
    assert change.words == "grid of compartments changed"


def _cover(**fields: object) -> Collection:
    """Give a garment alone in its cover."""
    return collection(changed(JAR, **fields), places=PLACES[:1])


BELT, BACK = ("belt",), (*JAR.photos, PhotoReference("back.jpg", PhotoRole.BACK))
NUMBER = JAR.object_number
GARMENT = {
    "period": (
        {"period": "1890s"},
        [(ChangeKind.OBJECT_WORDS, "period of 1987.412.9 added: '1890s'", NUMBER)],
    ),
    "name": (
        {"object_name": "coat"},
        [(ChangeKind.OBJECT_WORDS, "name of the object of 1987.412.9 added: 'coat'", NUMBER)],
    ),
    "accessories": (
        {"accessories": BELT},
        [(ChangeKind.OBJECT_WORDS, "accessories of 1987.412.9 added: 'belt'", NUMBER)],
    ),
    "notes": (
        {"condition": "stable"},
        [(ChangeKind.OBJECT_WORDS, "notes of 1987.412.9 added: 'Condition: stable'", NUMBER)],
    ),
    "photo of the back": (
        {"photos": BACK},
        [(ChangeKind.PHOTO, "second photo of 1987.412.9 changed", NUMBER)],
    ),
    "advice on hanging": (
        {"hang_factors": ("sound-shoulders",)},
        [
            (
                ChangeKind.LIFT,
                (
                    "hanging advice changed from 'No advice recorded: ask before hanging'"
                    " to 'Hang on a padded hanger: support the hem'"
                ),
                "",
            ),
            (
                ChangeKind.OBJECT_WORDS,
                "reason of the hanging advice added: 'sound shoulders'",
                "",
            ),
        ],
    ),
}


@pytest.mark.parametrize(("fields", "told"), GARMENT.values(), ids=GARMENT)
def test_a_cover_card_tells_of_its_garment(
    fields: dict[str, object], told: list[tuple[ChangeKind, str, str]]
) -> None:
    """All belongs to the garment it shows; how it hangs is as urgent as how a box is lifted."""
    assert compare("cover", _cover(), _cover(**fields)) == tuple(
        Change(
            kind,
            Urgency.HAZARD_OR_LIFT if kind is ChangeKind.LIFT else Urgency.WORDING,
            reason,
            number,
        )
        for kind, reason, number in told
    )


OPENLY = {"period": "1890s", "hang_factors": ("sound-shoulders",)}


def test_what_a_cover_said_of_a_discreet_garment_stays_inside() -> None:
    """Whether it may not be announced any more, or could not yet, its period is not told."""
    openly, hidden = _cover(**OPENLY), _cover(**OPENLY, restricted=True)
    for before, after, verb in (
        (openly, hidden, "no longer listed"),
        (hidden, openly, "added"),
    ):
        told = {change.words: change for change in compare("cover", before, after)}
        assert told[f"period of 1987.412.9 {verb}: '1890s'"] == Change(
            ChangeKind.OBJECT_WORDS,
            Urgency.WORDING,
            f"period of 1987.412.9 {verb}: '1890s'",
            NUMBER,
            "period of 1987.412.9 changed",
        )


def test_advice_on_a_discreet_garment_may_stand_outside() -> None:
    """How it hangs is printed on its cover for everybody."""
    before = _cover(restricted=True)
    after = _cover(restricted=True, hang_factors=("sound-shoulders",))
    (change,) = compare("cover", before, after)
    assert (change.kind, change.is_discreet) == (ChangeKind.LIFT, False)


PISTOL = changed(JAR, hazards=(Hazard("firearm", HazardState.CONFIRMED),))


FORMER = f"former numbers of {NUMBER}"


@pytest.mark.parametrize(
    ("record", "outside"),
    [
        (JAR, ""),
        (PISTOL, f"{FORMER} changed"),
        (changed(JAR, restricted=True), f"{FORMER} changed"),
    ],
    ids=["open", "discreet", "restricted"],
)
def test_a_tag_tells_of_its_object(record: ObjectRecord, outside: str) -> None:
    """Where the object must be asked for, what else is said of it stays inside."""
    after = collection(changed(record, former_numbers=("L.12",)))
    assert compare("tag", collection(record), after) == (
        Change(
            ChangeKind.OBJECT_WORDS, Urgency.WORDING, f"{FORMER} added: 'L.12'", NUMBER, outside
        ),
    )


@pytest.mark.parametrize(
    ("record", "outside"), [(JAR, ""), (PISTOL, "notes changed")], ids=["open", "discreet"]
)
def test_notes_of_a_list_are_told(record: ObjectRecord, outside: str) -> None:
    """They are about the container; beside a discreet object they may say too much outside."""
    after = collection(record, box=replace(BOX, packing_materials=("acid-free board",)))
    assert compare("list", collection(record), after) == (
        Change(
            ChangeKind.OBJECT_WORDS,
            Urgency.WORDING,
            "notes added: 'Packed with: acid-free board'",
            "",
            outside,
        ),
    )


def test_the_count_is_told_where_nothing_else_tells_it() -> None:
    """An end label names no objects, so that their number is what it tells."""
    after = collection(changed(LEAD, weight=JAR.weight), places=PLACES[:1])
    assert compare("end", collection(), after)[-1] == Change(
        ChangeKind.ARRANGEMENT,
        Urgency.CONTENTS,
        "count of objects changed from '2 objects' to '1 object'",
    )
    assert not any("count" in reason for reason in words("lid", after))
