"""Tests for telling what changed in hazards, lifting, limits and cautions."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.card import Card, EndLabel, LidCard
from service.cards.changes.change import Change, ChangeKind, Hint, Urgency
from service.cards.changes.compare_warnings import hint_warnings
from service.cards.changes.list_changes import list_changes
from service.cards.parts import Pointer, Warn
from service.records.record import (
    Collection,
    Hazard,
    HazardState,
    ObjectRecord,
    PlaceRecord,
    Weight,
)
from tests.cards.changes.cases import (
    BOX,
    JAR,
    LEAD,
    PLACES,
    changed,
    collection,
    compare,
    compose,
    words,
)
from tests.cards.changes.hazard_cases import CONFIRMED, HAZARDS, NONE, OUTSIDE, PRESUMED

FIRST = Urgency.HAZARD_OR_LIFT
NUMBER = JAR.object_number


@pytest.mark.parametrize("kind", ["lid", "end", "list", "cover", "side"])
@pytest.mark.parametrize(("before", "after", "told", "reason"), HAZARDS.values(), ids=HAZARDS)
def test_a_hazard_is_told_alone(
    kind: str, before: Collection, after: Collection, told: ChangeKind, reason: str
) -> None:
    """Every kind of card tells it in the same words; marks, lines and pointers follow from it."""
    assert compare(kind, before, after) == (Change(told, FIRST, reason, NUMBER),)


@pytest.mark.parametrize("kind", ["lid", "end", "list", "cover"])
def test_a_hazard_of_another_object_is_told_beside_one_that_stays(kind: str) -> None:
    """The warning names one object more, which did not move."""
    known = (Hazard("arsenic", HazardState.PRESUMED),)
    after = collection(changed(JAR, hazards=known), changed(LEAD, hazards=known))
    assert compare(kind, PRESUMED, after) == (
        Change(
            ChangeKind.HAZARD_ADDED,
            FIRST,
            "hazard added: arsenic (presumed) on 1931.14.2",
            "1931.14.2",
        ),
    )


def _marked(*marks: Warn) -> EndLabel:
    """Give the end label of the box with other marks."""
    card = compose("end", NONE)
    assert isinstance(card, EndLabel)
    return replace(card, marks=marks)


def test_a_state_that_only_one_program_prints_is_told() -> None:
    """Where no state stood less was said: naming one raises the hazard, and back."""
    bare, stated = (
        _marked(Warn("toxic", heading, "Gloves.")) for heading in ("Lead", "Lead presumed")
    )
    assert list_changes(bare, stated) == (
        Change(ChangeKind.HAZARD_RAISED, FIRST, "hazard raised to presumed: lead"),
    )
    assert list_changes(stated, bare) == (
        Change(ChangeKind.HAZARD_LOWERED, FIRST, "hazard now without a state, was presumed: lead"),
    )


def test_a_hazard_that_is_no_longer_recorded_is_not_called_gone() -> None:
    """A silent record is no evidence, so no word says that the object does no harm."""
    (first, *_) = compare("lid", CONFIRMED, NONE)
    assert first.kind is ChangeKind.HAZARD_UNRECORDED
    assert "no longer recorded" in first.words


LIFTS = {
    "heavier": (
        collection(changed(LEAD, weight=Weight(9_000.0))),
        (
            "weight now 10.6 kg (sum of the records), was 5.6 kg (sum of the records)."
            " At waist height, close to the body."
        ),
    ),
    "no longer known": (
        collection(changed(LEAD, weight=None)),
        (
            "weight now 1.6 kg (at least: 1 of 2 not weighed), was 5.6 kg (sum of the records)."
            " Weigh before lifting."
        ),
    ),
    "on a shelf": (
        collection(box=replace(BOX, hand_height_mm=900.0)),
        (
            "lift advice changed from 'Not above the shoulder at arm's length.'"
            " to 'One person: not above the shoulder at arm's length.'"
        ),
    ),
    "weighed": (
        collection(box=replace(BOX, gross=Weight(5_600.0))),
        "weight now 5.6 kg (weighed), was 5.6 kg (sum of the records)",
    ),
    "nothing known": (
        collection(
            changed(JAR, weight=None), changed(LEAD, weight=None), box=replace(BOX, tare=None)
        ),
        "weight now not known, was 5.6 kg (sum of the records). Weigh before lifting.",
    ),
}


@pytest.mark.parametrize(("after", "reason"), LIFTS.values(), ids=LIFTS)
def test_lifting_is_told_with_its_honesty(after: Collection, reason: str) -> None:
    """The weight, where it comes from, and what to do about it stand in one sentence."""
    assert compare("end", NONE, after) == (Change(ChangeKind.LIFT, FIRST, reason),)


def test_another_weight_is_the_reason_of_its_own_reason() -> None:
    """On a shelf the reason of the advice names the weight, which is told already."""
    box = replace(BOX, hand_height_mm=900.0)
    after = collection(changed(LEAD, weight=Weight(4_500.0)), box=box)
    reason = "weight now 6.1 kg (sum of the records), was 5.6 kg (sum of the records)"
    assert compare("lid", collection(box=box), after) == (Change(ChangeKind.LIFT, FIRST, reason),)


def test_another_source_of_the_advice_is_told() -> None:
    """Whoever relies on the advice reads where it comes from now."""
    card = _marked()
    older, newer = (
        replace(card, lift=replace(card.lift, source=f"Guide, edition {number}"))
        for number in (2, 3)
    )
    reason = "source of the lift advice changed from 'Guide, edition 2' to 'Guide, edition 3'"
    assert list_changes(older, newer) == (Change(ChangeKind.LIFT, FIRST, reason),)


LIGHT, HEAVY = collection(), collection(changed(JAR, weight=Weight(30_000.0)))
TAGS = {
    "heavy now": (
        LIGHT,
        HEAVY,
        "weight now 30 kg (weighed), was not named. Trolley or lifting aid; assess before lifting.",
    ),
    "light now": (HEAVY, LIGHT, "weight now not named, was 30 kg (weighed)"),
}


@pytest.mark.parametrize(("before", "after", "reason"), TAGS.values(), ids=TAGS)
def test_a_tag_names_the_weight_of_what_is_not_light_alone(
    before: Collection, after: Collection, reason: str
) -> None:
    """What is light has no words about lifting on its tag, so that all of them come or go."""
    assert compare("tag", before, after) == (Change(ChangeKind.LIFT, FIRST, reason),)


CAUTIONS = {
    "of the whole box": ("fragile", "fragile", FIRST, ""),
    "of one object": (
        "light-sensitive",
        "keep from light on 1987.412.9",
        Urgency.CONTENTS,
        NUMBER,
    ),
}


@pytest.mark.parametrize(("code", "name", "urgency", "number"), CAUTIONS.values(), ids=CAUTIONS)
def test_cautions_are_told(code: str, name: str, urgency: Urgency, number: str) -> None:
    """One that decides how the box is lifted is as urgent as its weight; marks follow from it."""
    with_it = collection(changed(JAR, cautions=(code,)))
    assert compare("lid", NONE, with_it) == (
        Change(ChangeKind.CAUTION_ADDED, urgency, f"caution added: {name}", number),
    )
    assert compare("lid", with_it, NONE) == (
        Change(ChangeKind.CAUTION_UNLISTED, urgency, f"caution no longer listed: {name}", number),
    )


@pytest.mark.parametrize("kind", ["lid", "list"])
def test_cautions_of_what_comes_or_goes_are_not_told(kind: str) -> None:
    """That the object came or went says it."""
    lamp = ObjectRecord("X.112", "Lamp", cautions=("light-sensitive",))
    without, with_it = (
        collection(lamp, places=places) for places in (PLACES, (*PLACES, PlaceRecord("X.112")))
    )
    for before, after in ((without, with_it), (with_it, without)):
        told = words(kind, after, before=before)
        assert any(reason.startswith("X.112 ") for reason in told)
        assert not any("caution" in reason for reason in told)


ONE, TWO = (collection(box=replace(BOX, stacking_limit=limit)) for limit in (1, 2))
LIMITS = {
    "added": (NONE, ONE, "limit of the container added: 'At most 1 box on top'"),
    "other": (
        ONE,
        TWO,
        "limit of the container changed from 'At most 1 box on top' to 'At most 2 boxes on top'",
    ),
    "gone": (ONE, NONE, "limit of the container no longer listed: 'At most 1 box on top'"),
}


@pytest.mark.parametrize(("before", "after", "reason"), LIMITS.values(), ids=LIMITS)
def test_limits_of_the_container_are_told(
    before: Collection, after: Collection, reason: str
) -> None:
    """What may stand on top is a matter of lifting and stacking."""
    assert compare("lid", before, after) == (Change(ChangeKind.LIMIT, FIRST, reason),)


def test_a_limit_that_stays_is_not_told() -> None:
    """Another title of the box leaves its limit alone."""
    after = collection(box=replace(BOX, stacking_limit=1, title="Finds"))
    assert [change.kind for change in compare("lid", ONE, after)] == [ChangeKind.CONTAINER]


WARNED = collection(
    changed(JAR, hazards=(Hazard("arsenic", HazardState.PRESUMED),), cautions=("fragile",))
)
OTHER_WORDS = {
    "what to do": (
        "hazards",
        {"instruction": "Gloves."},
        {"instruction": "Gloves and mask."},
        (
            ChangeKind.HAZARD_WORDS,
            FIRST,
            "what to do about 'Arsenic presumed' changed from 'Gloves.' to 'Gloves and mask.'",
        ),
    ),
    "mark of a hazard": (
        "hazards",
        {"mark": "toxic"},
        {"mark": "health"},
        (
            ChangeKind.HAZARD_WORDS,
            FIRST,
            "mark of 'Arsenic presumed' changed from 'toxic' to 'health'",
        ),
    ),
    "urgency": (
        "hazards",
        {"urgency": 2},
        {"urgency": 1},
        (ChangeKind.HAZARD_WORDS, FIRST, "urgency of 'Arsenic presumed' changed from '2' to '1'"),
    ),
    "mark of a caution": (
        "cautions",
        {"mark": "glass"},
        {"mark": "fragile"},
        (
            ChangeKind.CAUTION_WORDS,
            Urgency.CONTENTS,
            "mark of 'Fragile' changed from 'glass' to 'fragile'",
        ),
    ),
}


@pytest.mark.parametrize(
    ("field", "before", "after", "told"), OTHER_WORDS.values(), ids=OTHER_WORDS
)
def test_other_words_of_a_warning_are_told(
    field: str,
    before: dict[str, object],
    after: dict[str, object],
    told: tuple[ChangeKind, Urgency, str],
) -> None:
    """They come with the program or from the museum; those of a hazard are urgent."""

    def card(fields: dict[str, object]) -> LidCard:
        lid = compose("lid", WARNED)
        assert isinstance(lid, LidCard)
        (warn,) = getattr(lid.handling, field)
        other = {field: (replace(warn, **fields),)}
        handling = replace(lid.handling, **other)  # type: ignore[arg-type] # either field
        return replace(lid, handling=handling)

    assert list_changes(card(before), card(after)) == (Change(*told),)


def test_a_label_tells_where_an_object_with_a_hazard_went() -> None:
    """It names the place beside the warning; a lid card, which shows the object, tells it once."""
    record = changed(JAR, hazards=(Hazard("arsenic", HazardState.PRESUMED),))
    after = collection(record, places=(PlaceRecord(NUMBER, compartment="B3"), PLACES[1]))
    moved = Change(ChangeKind.MOVED, Urgency.CONTENTS, "1987.412.9 moved from A1 to B3", NUMBER)
    for kind in ("end", "lid"):
        assert compare(kind, PRESUMED, after) == (moved,)
        hints = hint_warnings(compose(kind, PRESUMED), compose(kind, after))
        assert list(hints) == [Hint(moved, frozenset({NUMBER}))]


A, B, C, D = (Pointer("", number) for number in "ABCD")
LEFT, RIGHT = Warn("toxic", "Lead presumed", "Gloves."), Warn("fragile", "Fragile")


def _beside(heading: str) -> Change:
    words = f"objects named beside '{heading}' changed"
    return Change(ChangeKind.CARD, Urgency.WORDING, words)


def test_other_objects_beside_a_warning_are_hinted_at() -> None:
    """Any change of one that came, went, gained or lost its mark explains it, of others none."""
    printed = _marked(replace(LEFT, pointers=(A, B, D), unmarked=(D,)))
    today = _marked(replace(LEFT, pointers=(A, C, D), unmarked=(D, A)))
    expected = Hint(_beside("Lead presumed"), frozenset("ABC"))
    assert list(hint_warnings(printed, today)) == [expected]


ORDERS: dict[str, tuple[Card, Card, Change]] = {
    "objects": (
        _marked(replace(LEFT, pointers=(A, B))),
        _marked(replace(LEFT, pointers=(B, A))),
        _beside("Lead presumed"),
    ),
    "warnings": (
        _marked(LEFT, RIGHT),
        _marked(RIGHT, LEFT),
        Change(ChangeKind.CARD, Urgency.WORDING, "order of the warnings changed"),
    ),
}


@pytest.mark.parametrize(("printed", "today", "told"), ORDERS.values(), ids=ORDERS)
def test_another_order_is_told_last(printed: Card, today: Card, told: Change) -> None:
    """Nothing but the order differs: the card says the same in other words."""
    assert list_changes(printed, today) == (told,)


@pytest.mark.parametrize(("kind", "pair", "inside", "outside"), OUTSIDE.values(), ids=OUTSIDE)
def test_a_discreet_hazard_has_words_for_outside(
    kind: str, pair: tuple[Collection, Collection], inside: str, outside: str
) -> None:
    """Neither what it is nor how much is known is told where anybody reads it."""
    first = compare(kind, *pair)[0]
    assert (first.words, first.discreet_words) == (inside, outside)
    assert (first.urgency, first.object_number) == (FIRST, NUMBER)


DISCREET = ["firearm", "ammunition", "restricted", "human-remains"]


@pytest.mark.parametrize("code", DISCREET)
def test_what_may_not_stand_outside_is_not_told_outside(code: str) -> None:
    """The office reads what it is; the paper that is carried about says only to ask."""
    after = collection(changed(JAR, hazards=(Hazard(code, HazardState.CONFIRMED),)))
    name = code.replace("-", " ")
    for change in compare("list", collection(), after):
        assert name not in change.outside_words.lower().replace("'restricted'", "")


def test_another_reason_for_the_same_advice_is_told() -> None:
    """A box that moved to a worse shelf says so, where one person still lifts it."""
    before, after = (
        collection(box=replace(BOX, hand_height_mm=height_mm)) for height_mm in (900.0, 1000.0)
    )
    (change,) = compare("lid", before, after)
    assert change.urgency is Urgency.HAZARD_OR_LIFT
    assert change.words.startswith("reason of the lift advice changed from '5.6 kg: within 10 kg")
