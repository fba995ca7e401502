"""Tells what changed in hazards, lifting, limits and cautions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from service.cards.card import Card
from service.cards.changes.change import Change, ChangeKind, Hint, Urgency
from service.cards.changes.facts import DISCREET_NAMES, RANKS, Fact
from service.cards.changes.telling import (
    Topic,
    differing,
    tell,
    tell_lines,
    tell_move,
    tell_value,
)
from service.cards.changes.views import (
    cautions_of,
    hazards_of,
    items_of,
    lift_of,
    limits_of,
    warns_of,
)
from service.cards.parts import Warn
from service.handling.cautions import CAUTIONS
from service.handling.lifting import NO_ADVICE, LiftAdvice
from service.printed import to_print
from service.sentence import Sentence

_URGENT = frozenset(entry.name for entry in CAUTIONS.values() if entry.whole_container)
"""Cautions that decide how the whole container is lifted or stood."""

_LIFT_WORDS = {
    "advice": to_print("lift advice"),
    "source": to_print("source of the lift advice"),
    "reason": to_print("reason of the lift advice"),
}
_WARN_WORDS = {
    "mark": to_print("mark of"),
    "instruction": to_print("what to do about"),
    "urgency": to_print("urgency of"),
}


def compare_warnings(printed: Card, today: Card) -> Iterator[Change]:
    """Tell what changed in hazards, lifting, limits and cautions, and in their words."""
    yield from _compare_hazards(hazards_of(printed), hazards_of(today))
    yield from _compare_lift(lift_of(printed), lift_of(today))
    if limits_of(printed) != limits_of(today):
        topic = Topic(ChangeKind.LIMIT, Urgency.HAZARD_OR_LIFT, to_print("limit of the container"))
        yield from tell_lines(topic, limits_of(printed), limits_of(today))
    yield from _compare_cautions(printed, today)
    before = _name_warns(printed)
    for key, warn in _name_warns(today).items():
        if key in before:
            yield from _compare_words(before[key], warn, is_hazard=key[0])


def hint_warnings(printed: Card, today: Card) -> Iterator[Hint]:
    """Tell what changed in the objects that warnings name, and in the order of warnings."""
    before, after = _name_warns(printed), _name_warns(today)
    for key, warn in after.items():
        if key in before:
            yield from _compare_pointers(before[key], warn)
    if [key for key in _keys(printed) if key in after] != [
        key for key in _keys(today) if key in before
    ]:
        words = to_print("order of the warnings changed")
        yield Hint(Change(ChangeKind.CARD, Urgency.WORDING, words))


def _name_warns(card: Card) -> dict[tuple[bool, str], Warn]:
    return {(is_hazard, warn.heading): warn for is_hazard, warn in warns_of(card)}


def _keys(card: Card) -> list[tuple[bool, str]]:
    return [(is_hazard, warn.heading) for is_hazard, warn in warns_of(card)]


def _compare_hazards(before: Sequence[Fact], after: Sequence[Fact]) -> Iterator[Change]:
    gone = [fact for fact in before if fact not in after]
    for fact in after:
        if fact in before:
            continue
        same = (old for old in gone if _subject(old) == _subject(fact))
        earlier = next(same, None)
        if earlier is None:
            yield _tell_hazard(ChangeKind.HAZARD_ADDED, fact, to_print("hazard added"))
        else:
            gone.remove(earlier)
            yield _tell_state(earlier, fact)
    for fact in gone:
        yield _tell_hazard(
            ChangeKind.HAZARD_UNRECORDED, fact, to_print("hazard no longer recorded here")
        )


def _subject(fact: Fact) -> tuple[str, str]:
    return (fact.name, fact.object_number)


def _tell_state(earlier: Fact, fact: Fact) -> Change:
    known = ("", *RANKS)
    if known.index(fact.state) > known.index(earlier.state):
        return _tell_hazard(
            ChangeKind.HAZARD_RAISED,
            fact,
            to_print("hazard raised to {state}", state=Sentence(fact.state)),
        )
    now = to_print(
        "hazard now {state}, was {before}",
        state=Sentence(fact.state) or to_print("without a state"),
        before=Sentence(earlier.state),
    )
    return _tell_hazard(ChangeKind.HAZARD_LOWERED, fact, now)


def _tell_hazard(kind: ChangeKind, fact: Fact, verb: str) -> Change:
    """Tell a change of a hazard; a discreet one is told outside by the words that stand there."""
    named_by_state = kind in {ChangeKind.HAZARD_RAISED, ChangeKind.HAZARD_LOWERED}
    outside = DISCREET_NAMES.get(fact.name, "")
    named: str = to_print("'{name}'", name=Sentence(outside))
    name = named if outside == fact.name else Sentence(_begin_low(fact.name))
    if fact.state and not named_by_state:
        name = to_print("{name} ({state})", name=name, state=Sentence(fact.state))
    outside_verb = to_print("hazard changed") if named_by_state else verb
    topic = Topic(kind, Urgency.HAZARD_OR_LIFT, "", fact.object_number, private=bool(outside))
    return tell(
        topic,
        _tell_fact(verb, name, fact),
        outside=_tell_fact(outside_verb, named, fact),
    )


def _compare_lift(before: LiftAdvice, after: LiftAdvice) -> Iterator[Change]:
    changed = {name: (old, new) for name, old, new in differing(before, after)}
    if "figure_kg" in changed or "qualifier" in changed:
        is_told = bool(after.advice) and "advice" in changed
        advice = to_print(". {advice}", advice=Sentence(after.advice)) if is_told else ""
        words = to_print(
            "weight now {after}, was {before}{advice}",
            after=_write_weight(after),
            before=_write_weight(before),
            advice=advice,
        )
        yield Change(ChangeKind.LIFT, Urgency.HAZARD_OR_LIFT, words)
        told = {"figure_kg", "qualifier", "advice", "reason"}
        if NO_ADVICE in (before, after):
            told.add("source")
        changed = {name: values for name, values in changed.items() if name not in told}
    elif "advice" in changed:
        # The reason for another advice is another, too.
        changed.pop("reason", None)
    for name, (old, new) in changed.items():
        topic = Topic(ChangeKind.LIFT, Urgency.HAZARD_OR_LIFT, _LIFT_WORDS[name])
        yield from tell_value(topic, old, new)


def _write_weight(lift: LiftAdvice) -> str:
    """Write a weight with its honesty; the tag of what is light names none."""
    if not lift.figure_kg:
        return _begin_low(lift.qualifier).removeprefix("weight ") or to_print("not named")
    return to_print(
        "{figure_kg} kg ({qualifier})", figure_kg=lift.figure_kg, qualifier=lift.qualifier
    )


def _compare_cautions(printed: Card, today: Card) -> Iterator[Change]:
    """Tell which cautions came and went, but not those of objects that came or went themselves."""
    old, new = ({item.object_number for item in items_of(card)} for card in (printed, today))
    passing = old ^ new
    before, after = cautions_of(printed), cautions_of(today)
    for fact in after:
        if fact not in before and fact.object_number not in passing:
            yield _tell_caution(ChangeKind.CAUTION_ADDED, fact, to_print("caution added"))
    for fact in before:
        if fact not in after and fact.object_number not in passing:
            yield _tell_caution(
                ChangeKind.CAUTION_UNLISTED, fact, to_print("caution no longer listed")
            )


def _tell_caution(kind: ChangeKind, fact: Fact, verb: str) -> Change:
    urgency = Urgency.HAZARD_OR_LIFT if fact.name in _URGENT else Urgency.CONTENTS
    words = _tell_fact(verb, Sentence(_begin_low(fact.name)), fact)
    return Change(kind, urgency, words, fact.object_number)


def _compare_words(before: Warn, after: Warn, *, is_hazard: bool) -> Iterator[Change]:
    kind = ChangeKind.HAZARD_WORDS if is_hazard else ChangeKind.CAUTION_WORDS
    urgency = Urgency.HAZARD_OR_LIFT if is_hazard else Urgency.CONTENTS
    for name, old, new in differing(before, after):
        if name not in {"pointers", "unmarked"}:
            what = to_print(
                "{what} '{heading}'", what=_WARN_WORDS[name], heading=Sentence(after.heading)
            )
            yield from tell_value(Topic(kind, urgency, what), old, new)


def _compare_pointers(before: Warn, after: Warn) -> Iterator[Hint]:
    if (before.pointers, before.unmarked) == (after.pointers, after.unmarked):
        return
    old = {pointer.object_number: pointer.place for pointer in before.pointers}
    moved = [
        pointer
        for pointer in after.pointers
        if old.get(pointer.object_number, pointer.place) != pointer.place
    ]
    for pointer in moved:
        number = pointer.object_number
        words = tell_move(number, old[number], pointer.place)
        change = Change(ChangeKind.MOVED, Urgency.CONTENTS, words, number)
        yield Hint(change, frozenset({number}))
    if not moved:
        named = {*before.pointers} ^ {*after.pointers} | {*before.unmarked} ^ {*after.unmarked}
        words = to_print(
            "objects named beside '{heading}' changed", heading=Sentence(after.heading)
        )
        change = Change(ChangeKind.CARD, Urgency.WORDING, words)
        yield Hint(change, frozenset(pointer.object_number for pointer in named))


def _tell_fact(verb: str, name: str, fact: Fact) -> str:
    return to_print("{verb}: {name}{on}", verb=verb, name=name, on=_on(fact))


def _on(fact: Fact) -> str:
    return (
        to_print(" on {object_number}", object_number=fact.object_number)
        if fact.object_number
        else ""
    )


def _begin_low(name: str) -> str:
    """Write a name as it stands within a sentence, an abbreviation as it is."""
    return name if name[1:2].isupper() else name[:1].lower() + name[1:]
