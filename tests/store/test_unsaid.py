from __future__ import annotations

from dataclasses import replace

from sqlalchemy import Engine

from service.records.read_tables import read_tables
from service.records.record import (
    Collection,
    Hazard,
    HazardState,
    ObjectRecord,
    Weight,
    WeightBasis,
)
from service.store.load_records import load_container, load_object
from service.store.open import reading, writing
from service.store.save_records import save_records
from service.store.unsaid import complete
from tests.store.made import HAT, LATER, LEAD, STAMP

ARSENIC = Hazard("arsenic", HazardState.CONFIRMED)
FULL = ObjectRecord(
    LEAD,
    "Lead line",
    condition="worn",
    weight=Weight(900.0, WeightBasis.MEASURED),
    weight_text="900 g",
    hazards=(ARSENIC,),
    source={"titel": "Lead line"},
)


def test_only_what_is_said_is_taken() -> None:
    """The fields of a said column change, the others stay; its cells join those that were there."""
    new = ObjectRecord(LEAD, "Sounding lead", source={"name": "Sounding lead"})
    done = complete(new, FULL, frozenset({"object_number", "title", "condition"}))
    assert done == replace(FULL, title="Sounding lead", condition="")
    assert done.source == {"titel": "Lead line", "name": "Sounding lead"}


def take_in(engine: Engine, objects: str, containers: str = "number\n") -> tuple[str, ...]:
    """Take two tables in, and name the objects that changed."""
    files = {"objects.csv": objects.encode(), "containers.csv": containers.encode()}
    with writing(engine) as connection:
        return save_records(connection, read_tables(files), stamp=LATER).objects.changed


def test_an_export_that_knows_less_takes_nothing_away(engine: Engine) -> None:
    """Two exports in turns end in one record; in a third round nothing changes any more."""
    care = f"number,hazards,weight,photos\n{LEAD},arsenic: confirmed,900 g,a.jpg\n"
    names = f"number,title,condition\n{LEAD},Sounding lead,\n"
    changed = [take_in(engine, table) for table in (care, names, care, names)]
    assert changed == [(LEAD,), (LEAD,), (), ()]
    with reading(engine) as connection:
        found = load_object(connection, LEAD)
    assert (found.title, found.hazards, found.weight_text) == ("Sounding lead", (ARSENIC,), "900 g")
    assert [photo.file for photo in found.photos] == ["a.jpg"]


def test_a_hazard_goes_only_in_words(engine: Engine) -> None:
    """An empty cell leaves it, "none" takes it out; so it is with a restriction."""
    take_in(engine, f"number,hazards,restricted\n{HAT},arsenic: confirmed,yes\n")
    assert take_in(engine, f"number,hazards,restricted\n{HAT},,\n") == ()
    assert take_in(engine, f"number,hazards,restricted\n{HAT},none,no\n") == (HAT,)
    with reading(engine) as connection:
        found = load_object(connection, HAT)
    assert (found.hazards, found.restricted) == ((), False)


def test_containers_keep_what_is_not_said(engine: Engine) -> None:
    """A list of places takes no weight away."""
    numbers = f"number\n{LEAD}\n"
    take_in(engine, numbers, "number,gross weight,questions_role\nB-001,7.4 kg,Desk\n")
    take_in(engine, numbers, "number,location\nB-001,Long Store / bay 2\n")
    with reading(engine) as connection:
        found = load_container(connection, "B-001")
    assert found.gross == Weight(7400.0)
    assert found.location == ("Long Store", "bay 2")
    assert found.questions.role == "Desk"


def test_a_record_meant_whole_replaces_all(engine: Engine) -> None:
    """Where nothing says which columns there were, the record is the record."""
    with writing(engine) as connection:
        save_records(connection, Collection(objects=(FULL,)), stamp=STAMP)
        save_records(connection, Collection(objects=(ObjectRecord(LEAD),)), stamp=LATER)
        assert load_object(connection, LEAD).hazards == ()
