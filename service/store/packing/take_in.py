"""Takes in the packings of a collection: what cannot be right is a finding, the rest is saved."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from sqlalchemy import Connection

from service.findings import Finding, Where, make_finding
from service.records.record import PackingRecord
from service.sentence import Sentence
from service.store.canonical import dump_json
from service.store.history import Change, Entry
from service.store.packing.differ import Repacking, compare_repacked
from service.store.packing.load import load_current, load_held, load_holders
from service.store.packing.occupancy import Clash, settle
from service.store.packing.save import add_revisions, tell_packing


@dataclass(frozen=True, slots=True)
class Outcome:
    """Numbers by what was done with them."""

    new: tuple[str, ...] = ()
    changed: tuple[str, ...] = ()
    unchanged: tuple[str, ...] = ()

    @property
    def touched(self) -> tuple[str, ...]:
        """Those whose record is not what it was before."""
        return (*self.new, *self.changed)


@dataclass(frozen=True, slots=True)
class PackingsPlan:
    """Packings to save, what comes of each container, and why others are refused.

    `current` are the packings that the containers have now, where they have any.
    """

    accepted: tuple[PackingRecord, ...]
    outcome: Outcome
    findings: tuple[Finding, ...]
    current: Mapping[str, PackingRecord]

    @property
    def repacked(self) -> dict[str, Repacking]:
        """How each container that has a packing already will be packed anew."""
        wanted = {packing.container_number: packing for packing in self.accepted}
        found = compare_repacked(self.current, wanted)
        return {number: found[number] for number in self.outcome.changed}


def plan_packings(
    connection: Connection, packings: Iterable[PackingRecord], *, new_containers: Iterable[str]
) -> PackingsPlan:
    """Find what differs from the current packings; what is refused keeps what it holds now.

    Packings of containers that neither the store nor `new_containers` knows, and those that would
    have an object in two containers, are refused with a finding.
    """
    wanted = _highest(packings)
    held = load_held(connection, list(wanted))
    revisions = {number: 0 for number in new_containers if number in wanted}
    revisions |= {number: one.revision for number, one in held.items()}
    current = load_current(connection, list(held))
    differing = {
        number: packing
        for number, packing in wanted.items()
        if number in revisions and not _same(packing, current.get(number))
    }
    clashes = _settle(connection, differing, current)
    accepted = tuple(packing for number, packing in differing.items() if number not in clashes)
    findings = [*_unknown(wanted, revisions), *(_two_places(clash) for clash in clashes.values())]
    outcome = _outcome(revisions, differing, accepted)
    return PackingsPlan(accepted, outcome, tuple(findings), current)


def take_in_packings(
    connection: Connection, change: Change, plan: PackingsPlan
) -> tuple[Entry, ...]:
    """Save what a plan accepts, and give what the history is to tell."""
    said = {packing.container_number: packing.revision for packing in plan.accepted}
    saved = add_revisions(connection, change, plan.accepted)
    return tuple(_tell(packing, said=said[packing.container_number]) for packing in saved)


def _highest(packings: Iterable[PackingRecord]) -> dict[str, PackingRecord]:
    """Choose the highest revision of each container; of equal ones the first."""
    chosen: dict[str, PackingRecord] = {}
    for packing in packings:
        other = chosen.setdefault(packing.container_number, packing)
        if packing.revision > other.revision:
            chosen[packing.container_number] = packing
    return chosen


def _same(wanted: PackingRecord, current: PackingRecord | None) -> bool:
    """Tell whether a packing is the current one, whatever revision it calls itself."""
    return current is not None and replace(wanted, revision=current.revision) == current


def _settle(
    connection: Connection,
    differing: Mapping[str, PackingRecord],
    current: Mapping[str, PackingRecord],
) -> dict[str, Clash]:
    """Find which containers cannot get what they are to hold."""
    wanted = {number: packing.places for number, packing in differing.items()}
    numbers = (place.object_number for places in wanted.values() for place in places)
    holding = load_holders(connection, numbers)
    own = {number: current[number].places for number in wanted if number in current}
    return {clash.container_number: clash for clash in settle({**holding, **own}, wanted)}


def _outcome(
    revisions: Mapping[str, int],
    differing: Mapping[str, PackingRecord],
    accepted: Iterable[PackingRecord],
) -> Outcome:
    done = [packing.container_number for packing in accepted]
    return Outcome(
        new=tuple(number for number in done if revisions[number] == 0),
        changed=tuple(number for number in done if revisions[number] > 0),
        unchanged=tuple(number for number in revisions if number not in differing),
    )


def _tell(packing: PackingRecord, *, said: int) -> Entry:
    """Tell of a packing taken in; where the source numbers it otherwise, its number is kept."""
    detail = {"reason": packing.reason} if packing.reason else {}
    said_too = {"revision_in_source": said} if said != packing.revision else {}
    text = dump_json({**detail, **said_too}) if detail or said_too else ""
    return tell_packing("packed", packing, detail=text)


def _unknown(
    wanted: Mapping[str, PackingRecord], revisions: Mapping[str, int]
) -> Iterable[Finding]:
    for number in wanted:
        if number not in revisions:
            yield make_finding(
                "unknown-container",
                Where(container_number=number),
                Sentence(
                    "A packing names container {number}, which is not in the records.",
                    number=number,
                ),
            )


def _two_places(clash: Clash) -> Finding:
    return make_finding(
        "object-in-two-places",
        Where(container_number=clash.container_number, object_number=clash.object_number),
        Sentence(
            "{object_number} is packed in {lies_in} and in {container_number};"
            " what {container_number} holds was left as it is.",
            object_number=clash.object_number,
            lies_in=clash.lies_in,
            container_number=clash.container_number,
        ),
    )
