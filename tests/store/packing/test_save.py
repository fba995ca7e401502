from __future__ import annotations

import json
import multiprocessing
from dataclasses import replace
from multiprocessing.connection import Connection as Pipe

import pytest
from sqlalchemy import Connection, Engine

from service.errors import NotFoundError, PackedElsewhereError, PackingConflictError
from service.records.record import PackingRecord, PlaceRecord
from service.store.canonical import encode_record
from service.store.history import Entry, load_history
from service.store.open import open_url, reading, writing
from service.store.packing.load import load_packing
from service.store.packing.save import save_packing
from tests.store.made import HAT, LAMP, LATER, LEAD, STAMP, collection, dump

ROUNDS = 30


def test_a_packing_is_the_next_revision(connection: Connection) -> None:
    """New contents become the next revision, whatever number they came with, and are told."""
    new = PackingRecord("B-001", 7, (PlaceRecord(LAMP),), "Ben", reason="flood")
    saved = save_packing(connection, new, expected_revision=1, stamp=LATER)
    assert saved == replace(new, revision=2)
    event = load_history(connection, container_number="B-001")[-1]
    assert event.stamp == LATER
    assert event.entry == Entry("packed", "B-001", revision=2, detail='{"reason":"flood"}')


def test_what_was_typed_is_tidied(connection: Connection) -> None:
    """A control character or a mark that turns the text would stop every card of the box."""
    typed = PlaceRecord(LAMP, compartment="B3\t", note="in \a\u202etissue\u2069")
    new = PackingRecord("B-001", places=(typed,), reason="flood\x0bdamage\u200b")
    saved = save_packing(connection, new, expected_revision=1, stamp=LATER)
    assert saved.places == (PlaceRecord(LAMP, compartment="B3", note="in tissue"),)
    assert saved.reason == "flood damage\u200b"
    assert load_packing(connection, "B-001") == saved


def test_a_stale_revision_shows_both_states(engine: Engine) -> None:
    """Whoever packed from an old state gets both states, and nothing is changed."""
    current = collection().packings[0]
    mine = PackingRecord("B-001", places=(PlaceRecord(LAMP),))
    with reading(engine) as connection:
        before = dump(connection)
    with pytest.raises(PackingConflictError) as caught, writing(engine) as connection:
        save_packing(connection, mine, expected_revision=0, stamp=STAMP)
    assert (caught.value.expected, caught.value.revision) == (0, 1)
    assert (caught.value.yours, caught.value.current) == (
        encode_record(mine),
        encode_record(current),
    )
    with reading(engine) as connection:
        assert dump(connection) == before


def test_a_first_packing_expects_nothing(connection: Connection) -> None:
    """A container never packed is at revision 0, and has no state to show."""
    with pytest.raises(PackingConflictError) as caught:
        save_packing(connection, PackingRecord("B-003"), expected_revision=1, stamp=STAMP)
    assert json.dumps(caught.value.current) == '""'
    saved = save_packing(connection, PackingRecord("B-003"), expected_revision=0, stamp=STAMP)
    assert saved.revision == 1


def test_a_thing_lies_in_one_container(connection: Connection) -> None:
    """Packing what lies elsewhere is refused, and the refusal says where it lies."""
    taken = PackingRecord("B-003", places=(PlaceRecord(LAMP), PlaceRecord(HAT, ("b",))))
    with pytest.raises(PackedElsewhereError, match=r"PMM.*B-003.*lies in B-002"):
        save_packing(connection, taken, expected_revision=0, stamp=STAMP)
    other_part = PackingRecord("B-003", places=(PlaceRecord(HAT, ("c",)),))
    save_packing(connection, other_part, expected_revision=0, stamp=STAMP)


def test_unknown_containers_are_refused(connection: Connection) -> None:
    """Nothing can be packed into a container that is in no record."""
    with pytest.raises(NotFoundError, match="B-999"):
        save_packing(connection, PackingRecord("B-999"), expected_revision=0, stamp=STAMP)


def pack_in_turns(url: str, name: str, pipe: Pipe) -> None:
    """Pack whenever told from which revision, and tell how it went; runs in a child process."""
    engine = open_url(url)
    while (revision := pipe.recv()) is not None:
        packing = PackingRecord("B-001", places=(PlaceRecord(LEAD, layer=revision),), reason=name)
        try:
            with writing(engine) as connection:
                save_packing(connection, packing, expected_revision=revision, stamp=STAMP)
            pipe.send("saved")
        except PackingConflictError as conflict:
            pipe.send(json.loads(conflict.current)["reason"])
    engine.dispose()


@pytest.mark.slow
def test_of_two_who_pack_at_once_one_wins(engine: Engine) -> None:
    """In every round one of two processes saves; the other is shown what the first one saved."""
    context = multiprocessing.get_context("spawn")
    url = engine.url.render_as_string(hide_password=False)
    pipes = {name: context.Pipe() for name in ("left", "right")}
    children = [
        context.Process(target=pack_in_turns, args=(url, name, theirs))
        for name, (_, theirs) in pipes.items()
    ]
    for child in children:
        child.start()
    for _, theirs in pipes.values():
        theirs.close()
    for revision in range(1, ROUNDS + 1):
        for ours, _ in pipes.values():
            ours.send(revision)
        answers = {name: ours.recv() for name, (ours, _) in pipes.items()}
        (winner,) = [name for name, answer in answers.items() if answer == "saved"]
        assert sorted(answers.values()) == sorted(["saved", winner])
        with reading(engine) as connection:
            current = load_packing(connection, "B-001")
        assert (current.revision, current.reason) == (revision + 1, winner)
    for ours, _ in pipes.values():
        ours.send(None)
    for child in children:
        child.join()
    assert [child.exitcode for child in children] == [0, 0]
