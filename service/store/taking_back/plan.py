"""What taking an import back would do: what goes back, what goes, what is left alone and why."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from sqlalchemy import Connection, select

from service.findings import Finding, Where, make_finding
from service.records.record import Collection, ContainerRecord, ObjectRecord, PackingRecord
from service.sentence import Sentence, join_sentences
from service.store.base.bulk import in_portions
from service.store.canonical import decode_record
from service.store.kept.imports import Import, load_import
from service.store.packing.take_in import plan_packings
from service.store.tables import actors, history
from service.store.taking_back.remove import why_containers_stay, why_objects_stay
from service.store.taking_back.states import (
    NOTHING,
    ChangedState,
    Key,
    State,
    StateKind,
    load_present,
    load_states,
)

_NAMES = {
    StateKind.MUSEUM: Sentence("What the museum chose"),
    StateKind.OBJECT: Sentence("Object"),
    StateKind.CONTAINER: Sentence("Container"),
    StateKind.PACKING: Sentence("What lies in"),
}
_RECORD_VERBS = (
    "recorded",
    "changed",
    "weight taken out",
    "museum changed",
    "taken out of the records",
)


@dataclass(frozen=True, slots=True)
class UndoPlan:
    """What taking an import back does.

    Attributes:
        of: The import.
        back: What goes back to what it was; packings to the contents of before.
        removed: Records that the import made anew, and that go.
        done: How many are as they were before already.
        left: How many are left alone.
        findings: What is left alone, and why.
        present: How everything is now.
    """

    of: Import
    back: tuple[ChangedState, ...] = ()
    removed: tuple[ChangedState, ...] = ()
    done: int = 0
    left: int = 0
    findings: tuple[Finding, ...] = ()
    present: Mapping[Key, State] = field(default_factory=dict)

    def numbers(self, kind: StateKind, *, removed: bool = False) -> tuple[str, ...]:
        """Give the numbers of one kind that go back, or that go."""
        some = self.removed if removed else self.back
        return tuple(one.number for one in some if one.kind is kind)

    @property
    def collection(self) -> Collection:
        """Everything that goes back as records: all but the museum."""
        return _collect(self.back)


def plan_undo(connection: Connection, import_id: int) -> UndoPlan:
    """Plan to take an import back; what somebody has changed since is left alone.

    Raises:
        NotFoundError: When there is no such import.
    """
    of = load_import(connection, import_id)
    states = load_states(connection, import_id)
    if not states and _changed_anything(of):
        message = Sentence(
            "Import {import_id} was taken in before former states were kept.", import_id=import_id
        )
        told = make_finding("import-not-undoable", Where(), message)
        return UndoPlan(of, findings=(told,))
    present = load_present(connection, [one.key for one in states])
    wanted, since, done = _sort_out(states, present)
    findings = list(_tell_since(connection, since))
    back, removed = _split(wanted)
    back, refused = _settle(connection, back)
    removed, kept = _keep_used(connection, back, removed)
    return UndoPlan(
        of,
        tuple(back),
        tuple(removed),
        done,
        len(since) + len(refused) + len(kept),
        (*findings, *refused, *kept),
        present,
    )


def _changed_anything(of: Import) -> bool:
    counts = (n for what, n in of.summary.items() if what.endswith((" new", " changed", "museum")))
    return any(counts)


def _sort_out(
    states: Iterable[ChangedState], present: Mapping[Key, State]
) -> tuple[list[ChangedState], list[ChangedState], int]:
    """Tell what can go back from what somebody has changed since, and count what is back."""
    wanted, since, done = list[ChangedState](), list[ChangedState](), 0
    for one in states:
        now = present.get(one.key, NOTHING).sha256
        if now == one.before.sha256:
            done += 1
        elif now == one.after_sha256:
            wanted.append(one)
        else:
            since.append(one)
    return wanted, since, done


def _split(wanted: Iterable[ChangedState]) -> tuple[list[ChangedState], list[ChangedState]]:
    """Tell what goes back from records that the import made anew."""
    back, made = list[ChangedState](), list[ChangedState]()
    for one in wanted:
        is_made = one.before.text is None and one.kind in {StateKind.OBJECT, StateKind.CONTAINER}
        (made if is_made else back).append(one)
    return back, made


def _settle(
    connection: Connection, back: list[ChangedState]
) -> tuple[list[ChangedState], list[Finding]]:
    """Leave out the packings of which something lies elsewhere by now."""
    collection = _collect(back)
    new = [one.container_number for one in collection.containers]
    plan = plan_packings(connection, collection.packings, new_containers=new)
    accepted = {one.container_number for one in plan.accepted} | set(plan.outcome.unchanged)
    kept = [one for one in back if one.kind is not StateKind.PACKING or one.number in accepted]
    return kept, list(plan.findings)


def _keep_used(
    connection: Connection, back: Sequence[ChangedState], made: Sequence[ChangedState]
) -> tuple[list[ChangedState], list[Finding]]:
    """Leave out what the import made and somebody uses by now."""
    boxes = [one.number for one in made if one.kind is StateKind.CONTAINER]
    again = [one.number for one in back if one.kind is StateKind.CONTAINER]
    stay = why_containers_stay(connection, boxes, going=frozenset((*boxes, *again)))
    why = {(StateKind.CONTAINER, number): reason for number, reason in stay.items()}
    numbers = [one.number for one in made if one.kind is StateKind.OBJECT]
    repacked = {one.number for one in back if one.kind is StateKind.PACKING}
    used = why_objects_stay(connection, numbers, repacked=repacked)
    why |= {(StateKind.OBJECT, number): reason for number, reason in used.items()}
    gone = [one for one in made if one.key not in why]
    return gone, [_tell_kept(one, why[one.key]) for one in made if one.key in why]


def _tell_since(connection: Connection, since: Sequence[ChangedState]) -> Iterator[Finding]:
    """Say who changed things since, and when."""
    last = _load_last(connection, since)
    for one in since:
        who = last.get(one.key, "somebody")
        message = Sentence(
            "{one} was changed since by {who}; it was left as it is.", one=_name(one), who=who
        )
        yield make_finding("changed-since-import", _where(one), message)


def _load_last(connection: Connection, since: Sequence[ChangedState]) -> dict[Key, str]:
    """Load who last changed each of these, and when."""
    found: dict[Key, str] = {}
    for kind, column in (
        (StateKind.MUSEUM, history.c.verb),
        (StateKind.OBJECT, history.c.object_number),
        (StateKind.CONTAINER, history.c.container_number),
        (StateKind.PACKING, history.c.container_number),
    ):
        is_packing = kind is StateKind.PACKING
        numbers = [one.number or "museum changed" for one in since if one.kind is kind]
        told = history.c.revision.is_not(None) if is_packing else history.c.verb.in_(_RECORD_VERBS)
        for some in in_portions(numbers):
            query = select(column, actors.c.name, history.c.at).join_from(history, actors)
            query = query.where(column.in_(some), told).order_by(history.c.id)
            for number, name, at in connection.execute(query):
                key = (kind, "" if kind is StateKind.MUSEUM else number)
                found[key] = f"{name} on {at:%Y-%m-%d at %H:%M} UTC"
    return found


def _tell_kept(one: ChangedState, reason: str) -> Finding:
    message = Sentence(
        "{one} was made by the import and stays: {reason}.", one=_name(one), reason=reason
    )
    return make_finding("kept-of-import", _where(one), message)


def _name(one: ChangedState) -> Sentence:
    return join_sentences(_NAMES[one.kind], one.number)


def _where(one: ChangedState) -> Where:
    if one.kind is StateKind.OBJECT:
        return Where(object_number=one.number)
    return Where(container_number=one.number)


def _collect(back: Iterable[ChangedState]) -> Collection:
    """Read the former states as a collection of whole records."""
    objects, containers, packings = [], [], []
    for one in back:
        text, source = one.before.text, one.before.source
        if one.kind is StateKind.OBJECT and text is not None:
            objects.append(decode_record(ObjectRecord, text, source=source))
        elif one.kind is StateKind.CONTAINER and text is not None:
            containers.append(decode_record(ContainerRecord, text, source=source))
        elif one.kind is StateKind.PACKING:
            bare = PackingRecord(one.number)
            packings.append(bare if text is None else decode_record(PackingRecord, text))
    return Collection(
        objects=tuple(objects), containers=tuple(containers), packings=tuple(packings)
    )
