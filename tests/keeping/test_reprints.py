"""Tests for the reprint list of a store."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import NamedTuple

import pytest

from service.cards.changes.change import Change, ChangeKind, Urgency
from service.errors import NotFoundError
from service.keeping.refresh import refresh_today
from service.keeping.repack import Seen, place_anew, put_in, take_out
from service.keeping.reprints import (
    Remembered,
    ReprintList,
    list_reprints,
    list_reprints_of,
    name_cards,
    name_reprints,
)
from service.keeping.today import compose_today
from service.pages.ruler import Ruler
from service.records.museum.language import Language
from service.records.museum.lifting import LiftingChoices
from service.records.record import (
    Collection,
    Hazard,
    HazardState,
    Lid,
    ObjectRecord,
    PlaceRecord,
    Weight,
)
from service.store.handles import Connection, Engine
from service.store.open import reading, writing
from service.store.printed.card import NewRun, describe_card
from service.store.printed.runs import load_attached, save_run
from service.store.printed.states import mark_attached, mark_spoiled
from service.store.save_records import save_records
from tests.keeping.changed import other_address, with_container, with_object
from tests.keeping.made import BOX, COLLECTION, COVER, EMPTY, GOWN, JAR, LEAD, attach_all
from tests.keeping.tags.made import attach_tags, print_tags
from tests.store.made import LATER

LEAD_RECORD, BOX_RECORD = COLLECTION.objects[1], COLLECTION.containers[0]


@pytest.fixture(autouse=True)
def attached(engine: Engine, ruler: Ruler) -> None:
    """Attach all cards of the box and the garment cover."""
    with writing(engine) as connection:
        for number in (BOX, COVER):
            attach_all(connection, ruler, number)


def _added(connection: Connection) -> None:
    put_in(connection, Seen(BOX, 1), PlaceRecord("X.112", layer=2), stamp=LATER)


def _taken_again(connection: Connection) -> None:
    take_out(connection, Seen(BOX, 2), LEAD, stamp=LATER)


def _taken(connection: Connection) -> None:
    take_out(connection, Seen(BOX, 1), JAR, stamp=LATER)


def _lower(connection: Connection) -> None:
    place_anew(connection, Seen(BOX, 1), PlaceRecord(JAR, layer=3), stamp=LATER)


ALL = {"lid-card", "end-label", "contents-list"}
LISTS = {"lid-card", "contents-list"}


class Case(NamedTuple):
    """A change, and what is listed after it: which cards, how soon, and a word of the reasons."""

    change: Callable[[Connection], object]
    kinds: set[str]
    urgency: Urgency
    word: str


CASES = {
    "title": Case(
        with_object(replace(LEAD_RECORD, title="Hand lead line")), LISTS, Urgency.WORDING, LEAD
    ),
    "hazard": Case(
        with_object(replace(LEAD_RECORD, hazards=(Hazard("lead", HazardState.CONFIRMED),))),
        ALL,
        Urgency.HAZARD_OR_LIFT,
        "confirmed",
    ),
    "weight": Case(
        with_object(replace(LEAD_RECORD, weight=Weight(9_000.0))),
        ALL,
        Urgency.HAZARD_OR_LIFT,
        "10.6",
    ),
    "an object more": Case(_added, ALL, Urgency.HAZARD_OR_LIFT, "X.112 added"),
    "an object fewer": Case(_taken, ALL, Urgency.HAZARD_OR_LIFT, JAR),
    "place": Case(_lower, LISTS, Urgency.CONTENTS, JAR),
    "container": Case(
        with_container(replace(BOX_RECORD, title="Finds")), ALL, Urgency.WORDING, "Finds"
    ),
    "a clear lid": Case(
        with_container(replace(BOX_RECORD, lid=Lid.CLEAR)),
        {"lid-card"},
        Urgency.CONTENTS,
        "take it off",
    ),
}


@pytest.mark.parametrize("case", CASES.values(), ids=CASES)
def test_a_change_that_shows_is_listed(engine: Engine, ruler: Ruler, case: Case) -> None:
    """Just the cards that show what changed are listed, with how soon and why."""
    refresh_today(engine, ruler)
    with writing(engine) as connection:
        case.change(connection)
    found = list_reprints(engine, ruler).out_of_date
    assert {(one.reprint.container_number, one.reprint.kind) for one in found} == {
        (BOX, kind) for kind in case.kinds
    }
    assert min(one.reprint.urgency for one in found) is case.urgency
    assert any(case.word in reason.words for one in found for reason in one.reprint.changes)


def test_another_address_makes_every_card_wrong(engine: Engine, ruler: Ruler) -> None:
    """The symbol of every attached card leads elsewhere than it should."""
    with writing(engine) as connection:
        other_address(connection)
    found = list_reprints(engine, ruler).out_of_date
    assert {one.reprint.container_number for one in found} == {BOX, COVER}
    assert len(found) == 6


def test_a_second_language_makes_cards_wrong_that_speak_it(engine: Engine, ruler: Ruler) -> None:
    """The choice lists every card that gets other words, with the reason, and back again none."""
    refresh_today(engine, ruler)
    with writing(engine) as connection:
        museum = replace(COLLECTION.museum, second_language=Language.WELSH)
        save_records(connection, Collection(museum=museum), stamp=LATER)
    found = list_reprints(engine, ruler).out_of_date
    assert {(one.reprint.container_number, one.reprint.kind) for one in found} == {
        (BOX, "lid-card"),
        (BOX, "end-label"),
        (BOX, "contents-list"),
        (COVER, "cover-card"),
    }
    told = {reason.words for one in found for reason in one.reprint.changes}
    assert told == {"second language added: 'cy'"}
    with writing(engine) as connection:
        save_records(connection, Collection(museum=COLLECTION.museum), stamp=LATER)
    assert list_reprints(engine, ruler).out_of_date == ()


SILENT: dict[str, Callable[[Connection], object]] = {
    "a location that is not printed": with_container(replace(BOX_RECORD, location=("Store 3",))),
    "grams that round away": with_object(replace(LEAD_RECORD, weight=Weight(4_004.0))),
    "another source row": with_object(replace(LEAD_RECORD, source={"Nr": "1931.14.2"})),
    "an object that lies elsewhere": with_object(ObjectRecord("X.999", "Buoy")),
}


@pytest.mark.parametrize("change", SILENT.values(), ids=SILENT)
def test_a_change_that_shows_nowhere_is_not_listed(
    engine: Engine, ruler: Ruler, change: Callable[[Connection], object]
) -> None:
    """A change that alters no card makes no card wrong."""
    with writing(engine) as connection:
        change(connection)
    assert list_reprints(engine, ruler).out_of_date == ()


def test_there_and_back_again_is_no_change(engine: Engine, ruler: Ruler) -> None:
    """Two repackings that end where they began need no new card."""
    with writing(engine) as connection:
        _added(connection)
    assert list_reprints(engine, ruler).out_of_date
    with writing(engine) as connection:
        take_out(connection, Seen(BOX, 2), "X.112", stamp=LATER)
    assert list_reprints(engine, ruler).out_of_date == ()


def test_what_is_lacking_is_listed_beside_it(engine: Engine, ruler: Ruler) -> None:
    """The spare box has no cards yet."""
    lacking = list_reprints(engine, ruler).unattached
    assert {one.container_number for one in lacking} == {EMPTY}
    assert not any(one.is_made for one in lacking)


def test_only_the_container_asked_for_is_listed(engine: Engine, ruler: Ruler) -> None:
    """Its neighbours may be wrong and lack cards, too: nobody asked."""
    refresh_today(engine, ruler)
    with writing(engine) as connection:
        other_address(connection)
        box, spare = (list_reprints_of(connection, ruler, number) for number in (BOX, EMPTY))
    assert {one.reprint.container_number for one in box.out_of_date} == {BOX}
    assert (box.unattached, spare.out_of_date) == ((), ())
    assert {one.container_number for one in spare.unattached} == {EMPTY}
    assert {one.kind for one in spare.unattached} == ALL


def test_each_side_is_listed(engine: Engine, ruler: Ruler) -> None:
    """Both end labels are to be replaced, and progress is told while one waits."""
    told: list[tuple[str, int, int]] = []
    with writing(engine) as connection:
        with_container(replace(BOX_RECORD, title="Finds"))(connection)
    listed = list_reprints(engine, ruler, on_progress=lambda *step: told.append(step))
    assert told == [("cards", 3, 3)]
    labels = [one.reprint for one in listed.out_of_date if one.reprint.kind == "end-label"]
    assert [label.side for label in labels] == [1, 2]


def test_a_card_the_container_gets_no_more_only_comes_off(engine: Engine, ruler: Ruler) -> None:
    """There is nothing to print in its place."""
    with writing(engine) as connection:
        with_container(replace(BOX_RECORD, lid=Lid.CLEAR))(connection)
    (one,) = list_reprints(engine, ruler).out_of_date
    words = "the container gets no lid card any more: take it off"
    assert one.reprint.changes == (Change(ChangeKind.CARD, Urgency.CONTENTS, words),)
    assert one.today is None


def test_cards_that_cannot_be_worded_are_listed_with_the_reason(
    engine: Engine, ruler: Ruler
) -> None:
    """A mistyped address of the museum is told for each container and each of its cards."""
    pattern = "http://plain.example/{container_number}"
    museum = replace(COLLECTION.museum, container_address=pattern)
    with writing(engine) as connection:
        save_records(connection, Collection(museum=museum), stamp=LATER)
    listed = list_reprints(engine, ruler)
    assert {number: error.code for number, error in listed.failed} == {
        BOX: "address-pattern",
        COVER: "address-pattern",
    }
    assert {one.today for one in listed.out_of_date} == {None}
    (reason,) = {reason for one in listed.out_of_date for reason in one.reprint.changes}
    assert (reason.kind, reason.urgency) == (ChangeKind.CARD, Urgency.CONTENTS)
    assert reason.words.startswith(
        "the card cannot be worded as the records are now:"
        f" The address pattern '{pattern}' cannot be used: "
    )


def test_why_a_container_is_not_listed(connection: Connection, ruler: Ruler) -> None:
    """Asked for one container the answer needs no note, and an unknown number is told."""
    assert list_reprints_of(connection, ruler, BOX).out_of_date == ()
    _added(connection)
    assert len(list_reprints_of(connection, ruler, BOX).out_of_date) == 4
    with pytest.raises(NotFoundError, match="B-999"):
        list_reprints_of(connection, ruler, "B-999")


def test_what_is_to_be_printed_is_named(engine: Engine, ruler: Ruler) -> None:
    """Only cards that the container still gets; where there are none it is told."""
    with pytest.raises(NotFoundError, match="There is no card on the 'reprint list'"):
        name_reprints(engine, ruler)
    with writing(engine) as connection:
        with_container(replace(BOX_RECORD, title="Finds", lid=Lid.CLEAR))(connection)
    assert name_reprints(engine, ruler) == {
        (BOX, "end-label", 1),
        (BOX, "end-label", 2),
        (BOX, "contents-list", 1),
    }


def test_a_changed_lifting_limit_lists_the_cards_that_now_advise_otherwise(
    engine: Engine, ruler: Ruler
) -> None:
    """The box of 5.6 kg now needs two people; the garment cover is not weighed and stays right."""
    choices = LiftingChoices(waist_above_kg=4.0, two_people_above_kg=5.0)
    museum = replace(COLLECTION.museum, lifting=choices)
    with writing(engine) as connection:
        save_records(connection, Collection(museum=museum), stamp=LATER)
    found = list_reprints(engine, ruler).out_of_date
    assert {one.reprint.container_number for one in found} == {BOX}
    assert {one.reprint.kind for one in found} == ALL
    words = {change.words for one in found for change in one.reprint.changes}
    before, after = "Not above the shoulder at arm's length.", "Two people or a trolley."
    assert words == {f"lift advice changed from '{before}' to '{after}'"}


def test_what_is_made_on_request_is_listed_once_it_is_wrong(engine: Engine, ruler: Ruler) -> None:
    """A warning label is missed by nobody; an attached one is told why it is wrong, in words."""
    with writing(engine) as connection:
        label = compose_today(connection, ruler, [BOX]).cards[BOX, "warning-label", 1]
        (made,) = save_run(connection, NewRun((describe_card(label),)), stamp=LATER)
    assert list_reprints(engine, ruler).out_of_date == ()
    assert {one.kind for one in list_reprints(engine, ruler).unattached} == ALL
    with writing(engine) as connection:
        mark_attached(connection, made.card_id, stamp=LATER)
        confirmed = replace(LEAD_RECORD, hazards=(Hazard("lead", HazardState.CONFIRMED),))
        save_records(connection, Collection(objects=(confirmed,)), stamp=LATER)
    found = {one.printed.made.kind: one for one in list_reprints(engine, ruler).out_of_date}
    words = [change.words for change in found["warning-label"].reprint.changes]
    assert words[0] == f"hazard raised to confirmed: lead on {LEAD}"
    assert "side-card" not in found


def test_printed_cards_are_named_by_their_numbers(engine: Engine) -> None:
    """Two copies of one card are one card to print; a number that was never printed is told."""
    with reading(engine) as connection:
        first, *rest = load_attached(connection)
        assert name_cards(connection, [first.card_id, first.card_id]) == {first.made.key}
        assert len(name_cards(connection, [card.card_id for card in rest])) == len(rest)
        with pytest.raises(NotFoundError, match="printed card '999'"):
            name_cards(connection, [first.card_id, 999])


OWL = ObjectRecord("X.112", "Owl in a case")


def _other_pattern(connection: Connection, pattern: str) -> None:
    museum = replace(COLLECTION.museum, object_address=pattern)
    save_records(connection, Collection(museum=museum), stamp=LATER)


def _tags(found: ReprintList) -> list[tuple[str, str]]:
    """Name the objects of the tags on a list, each with the container it lies in."""
    return [
        (one.reprint.container_number, one.reprint.object_number)
        for one in found.out_of_date
        if one.reprint.kind == "object-tag"
    ]


def test_no_tag_is_ever_lacking(engine: Engine, ruler: Ruler) -> None:
    """Whether printed or not, an object without a tag is no fault."""
    with writing(engine) as connection:
        print_tags(connection, ruler, GOWN)
    assert "object-tag" not in {one.kind for one in list_reprints(engine, ruler).unattached}


def test_a_tag_is_judged_once_it_is_tied_on(engine: Engine, ruler: Ruler) -> None:
    """One that lay about while its record changed is wrong from then on, whatever hung there."""
    with writing(engine) as connection:
        (waiting,), (first,) = (print_tags(connection, ruler, GOWN) for _ in range(2))
        mark_attached(connection, first.card_id, stamp=LATER)
    assert _tags(list_reprints(engine, ruler)) == []
    with writing(engine) as connection:
        mark_spoiled(connection, first.card_id, stamp=LATER)
        gown = ObjectRecord(GOWN, "Regatta dress")
        save_records(connection, Collection(objects=(gown,)), stamp=LATER)
    assert _tags(list_reprints(engine, ruler)) == []
    with writing(engine) as connection:
        mark_attached(connection, waiting.card_id, stamp=LATER)
    assert _tags(list_reprints(engine, ruler)) == [(COVER, GOWN)]
    assert (GOWN, "object-tag", 1) in name_reprints(engine, ruler)


def test_tags_are_listed_where_their_objects_lie(engine: Engine, ruler: Ruler) -> None:
    """Beside the cards of the box an object lies in now; what lies nowhere comes last."""
    with writing(engine) as connection:
        save_records(connection, Collection(objects=(OWL,)), stamp=LATER)
        attach_tags(connection, ruler, OWL.object_number, GOWN, JAR, LEAD)
        take_out(connection, Seen(BOX, 1), LEAD, stamp=LATER)
        put_in(connection, Seen(EMPTY, 0), PlaceRecord(LEAD), stamp=LATER)
        _other_pattern(connection, "https://portmerrow.example/o/{object_number}")
    found = list_reprints(engine, ruler)
    # The box lost its lead, so it is the most urgent stop, and its tag is changed with the rest.
    assert _tags(found) == [(BOX, JAR), (EMPTY, LEAD), (COVER, GOWN), ("", OWL.object_number)]
    box = [one.reprint.kind for one in found.out_of_date if one.reprint.container_number == BOX]
    assert set(box) == {*ALL, "object-tag"}
    with reading(engine) as connection:
        assert _tags(list_reprints_of(connection, ruler, EMPTY)) == [(EMPTY, LEAD)]


def test_a_tag_that_cannot_be_worded_is_told(engine: Engine, ruler: Ruler) -> None:
    """A mistyped address lists every tag with the reason, and none is to be printed."""
    with writing(engine) as connection:
        attach_tags(connection, ruler, LEAD)
        _other_pattern(connection, "http://plain.example/{object_number}")
    found = list_reprints(engine, ruler)
    assert [number for number, _ in found.failed_tags] == [LEAD]
    assert _tags(found) == [(BOX, LEAD)]
    with pytest.raises(NotFoundError, match="reprint list"):
        name_reprints(engine, ruler)


def test_what_was_found_before_is_not_found_again(engine: Engine, ruler: Ruler) -> None:
    """The same list comes without wording a card; what changed since is worded anew."""
    kept = Remembered()
    lists = []
    for change in (_added, None, _taken_again):
        if change:
            with writing(engine) as connection:
                change(connection)
        lists.append(list_reprints(engine, ruler, remembered=kept))
    first, again, later = lists
    assert again.out_of_date[0].today is first.out_of_date[0].today
    assert later == list_reprints(engine, ruler) != again == first
