"""Tests for telling which objects came, went, moved or are shown in other words."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.card import LidCard
from service.cards.changes.change import Change, ChangeKind, Urgency
from service.cards.changes.list_changes import list_changes
from service.records.record import (
    Collection,
    Hazard,
    HazardState,
    ObjectRecord,
    PhotoReference,
    PlaceRecord,
)
from tests.cards.changes.cases import (
    JAR,
    LEAD,
    PLACES,
    changed,
    collection,
    compare,
    compose,
    words,
)

TELEGRAPH = ObjectRecord("X.112", "Engine telegraph", weight=JAR.weight)
JAR_IN, LEAD_IN = PLACES


CAME_OR_WENT = {
    "added": (
        collection(TELEGRAPH, places=(*PLACES, PlaceRecord("X.112", layer=2))),
        Change(ChangeKind.ADDED, Urgency.CONTENTS, "X.112 added", "X.112"),
    ),
    "taken out": (
        collection(places=(LEAD_IN,)),
        Change(ChangeKind.TAKEN_OUT, Urgency.CONTENTS, "1987.412.9 taken out", "1987.412.9"),
    ),
    "another layer": (
        collection(places=(PlaceRecord("1987.412.9", layer=3, compartment="A1"), LEAD_IN)),
        Change(
            ChangeKind.MOVED,
            Urgency.CONTENTS,
            "1987.412.9 moved from layer 1 A1 to layer 3 A1",
            "1987.412.9",
        ),
    ),
}


@pytest.mark.parametrize(("after", "told"), CAME_OR_WENT.values(), ids=CAME_OR_WENT)
def test_what_came_went_or_moved_is_told(after: Collection, told: Change) -> None:
    """A registrar reads which object it is and what happened to it, whatever else that changes."""
    assert told in compare("lid", collection(), after)


MOVED = (ChangeKind.MOVED, Urgency.CONTENTS, "1987.412.9 moved from A1 to B3")
NOTED = (
    ChangeKind.OBJECT_WORDS,
    Urgency.WORDING,
    "parts and note of 1987.412.9 added: 'in tissue'",
)
NO_PHOTO = (ChangeKind.PHOTO, Urgency.WORDING, "photo of 1987.412.9 changed")
STAYED = {
    "title": (
        collection(changed(JAR, title="Bait jar, stoneware")),
        [
            (
                ChangeKind.OBJECT_WORDS,
                Urgency.WORDING,
                "title of 1987.412.9 changed from 'Bait jar' to 'Bait jar, stoneware'",
            )
        ],
    ),
    "another photo": (
        collection(changed(JAR, photos=(PhotoReference("other.jpg"),))),
        [NO_PHOTO],
    ),
    "a photo that is gone, and the words in its frame": (
        collection(changed(JAR, photos=())),
        [NO_PHOTO],
    ),
    "another compartment, and its place on the map": (
        collection(places=(replace(JAR_IN, compartment="B3"), LEAD_IN)),
        [MOVED],
    ),
    "all of these and a note": (
        collection(
            changed(JAR, photos=()),
            places=(replace(JAR_IN, compartment="B3", note="in tissue"), LEAD_IN),
        ),
        [MOVED, NO_PHOTO, NOTED],
    ),
}


@pytest.mark.parametrize(("after", "told"), STAYED.values(), ids=STAYED)
def test_what_changed_of_an_object_is_told_once(
    after: Collection, told: list[tuple[ChangeKind, Urgency, str]]
) -> None:
    """What follows from another change is no reason of its own, and nothing behind it is lost."""
    expected = tuple(Change(*reason, "1987.412.9") for reason in told)
    assert compare("lid", collection(), after) == expected


DRAWN = {
    "cell": (
        (1, 1),
        (ChangeKind.MOVED, Urgency.CONTENTS, "compartment on the map of 1987.412.9 changed"),
    ),
    "marks": (
        (("glass", "Lead presumed"),),
        (ChangeKind.CAUTION_WORDS, Urgency.CONTENTS, "marks beside the object of 1987.412.9"),
    ),
}


@pytest.mark.parametrize(("field", "case"), DRAWN.items(), ids=DRAWN)
def test_what_a_program_draws_otherwise_is_told(
    field: str, case: tuple[object, tuple[ChangeKind, Urgency, str]]
) -> None:
    """Nothing in the records changed, and the card says something else all the same."""
    value, (kind, urgency, reason) = case
    card = compose("lid", collection(changed(JAR, hazards=(Hazard("lead", HazardState.PRESUMED),))))
    assert isinstance(card, LidCard)
    layer = card.layers[0]
    drawn = replace(layer.objects[0], **{field: value})  # type: ignore[arg-type] # either field
    other = replace(layer, objects=(drawn,))
    (change,) = list_changes(card, replace(card, layers=(other, *card.layers[1:])))
    assert (change.kind, change.urgency, change.object_number) == (kind, urgency, "1987.412.9")
    assert change.words.startswith(reason)


def test_another_order_is_told() -> None:
    """The objects stand in another order than the card says."""
    one, other = (PlaceRecord(record.object_number) for record in (JAR, LEAD))
    before, after = collection(places=(one, other)), collection(places=(other, one))
    assert compare("lid", before, after) == (
        Change(ChangeKind.ARRANGEMENT, Urgency.CONTENTS, "order of the objects changed"),
    )


LAYERS = {
    "lid": "layers changed from 'one layer' to 'Layer 1, top; Layer 2, bottom'",
    "list": "layers changed from 'one layer' to 'layer 1; layer 2'",
}


@pytest.mark.parametrize(("kind", "reason"), LAYERS.items(), ids=LAYERS)
def test_other_layers_are_told(kind: str, reason: str) -> None:
    """Where one layer becomes two nothing has moved between layers, and the count follows."""
    before = collection(places=(JAR_IN, replace(LEAD_IN, layer=1)))
    (change,) = compare(kind, before, collection())
    assert change == Change(ChangeKind.ARRANGEMENT, Urgency.CONTENTS, reason)


def test_another_part_of_an_object_is_told_as_such() -> None:
    """An object of which one part was there already is not added anew."""
    before = collection(places=(PlaceRecord("1931.14.2", ("a",)),))
    after = collection(places=(PlaceRecord("1931.14.2", ("a",)), PlaceRecord("1931.14.2", ("b",))))
    assert "another part of 1931.14.2 added" in words("lid", after, before=before)


def test_an_end_label_names_no_objects() -> None:
    """What an end label does not show makes no end label wrong."""
    assert words("end", collection(changed(LEAD, title="Hand lead line"))) == []


def test_details_of_the_contents_list_are_told() -> None:
    """The list says more, so more of it can go out of date."""
    after = collection(changed(LEAD, condition="flaking"))
    assert words("list", after) == ["details of 1931.14.2 added: 'Condition: flaking'"]


def test_details_are_told_beside_a_hazard() -> None:
    """Only the lines about hazards and cautions follow from them."""
    hazards = (Hazard("lead", HazardState.PRESUMED),)
    after = collection(
        changed(LEAD, condition="flaking", hazards=hazards, cautions=("light-sensitive",))
    )
    assert words("list", after) == [
        "hazard added: lead (presumed) on 1931.14.2",
        "caution added: keep from light on 1931.14.2",
        "details of 1931.14.2 added: 'Condition: flaking'",
    ]


PISTOL = changed(JAR, hazards=(Hazard("firearm", HazardState.CONFIRMED),))
PRIVATE = {
    "title": (
        {"title": "Flintlock"},
        "title of 1987.412.9 changed from 'Bait jar' to 'Flintlock'",
        "title of 1987.412.9 changed",
    ),
    "details": (
        {"condition": "rusty lock"},
        "details of 1987.412.9 added: 'Condition: rusty lock'",
        "details of 1987.412.9 changed",
    ),
    "photo": (
        {"photos": (PhotoReference("flintlock.jpg"),)},
        "photo of 1987.412.9 changed",
        "",
    ),
}


@pytest.mark.parametrize(("fields", "inside", "outside"), PRIVATE.values(), ids=PRIVATE)
def test_what_is_said_of_a_discreet_object_stays_inside(
    fields: dict[str, object], inside: str, outside: str
) -> None:
    """Outside only that it changed; what is said of its neighbour may stand there."""
    neighbour = changed(LEAD, title="Hand lead line")
    told = compare("list", collection(PISTOL), collection(changed(PISTOL, **fields), neighbour))
    assert [(change.words, change.discreet_words, change.object_number) for change in told] == [
        (inside, outside, "1987.412.9"),
        (
            "title of 1931.14.2 changed from 'Lead line' to 'Hand lead line'",
            "",
            "1931.14.2",
        ),
    ]
