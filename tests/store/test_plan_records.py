from __future__ import annotations

from dataclasses import replace

from sqlalchemy import Engine

from service.records.record import (
    Collection,
    ContainerRecord,
    Museum,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
)
from service.store.open import reading, writing
from service.store.plan_records import plan_records
from service.store.save_records import save_records
from tests.store.made import HAT, LAMP, LATER, LEAD, collection, dump

COMING = Collection(
    museum=Museum("Port Merrow Museum"),
    objects=(
        ObjectRecord(LEAD, "Lead line", source={"Titel": "Lead line"}),
        ObjectRecord(HAT, f"Title of {HAT}"),
        ObjectRecord("X.113", "Buoy"),
    ),
    containers=(ContainerRecord("B-001", title="Leads"), ContainerRecord("B-009")),
    packings=(
        PackingRecord("B-009", 1, (PlaceRecord("X.113"),)),
        PackingRecord("B-003", 1, (PlaceRecord(HAT, ("a",)),)),
        PackingRecord("B-999"),
    ),
)


def test_a_plan_says_what_saving_does(engine: Engine) -> None:
    """What is new, changed, unchanged and refused is the same; the plan alone changes nothing."""
    with reading(engine) as connection:
        before = dump(connection)
        plan = plan_records(connection, COMING)
    with reading(engine) as connection:
        assert dump(connection) == before
    with writing(engine) as connection:
        saved = save_records(connection, COMING, stamp=LATER)
    assert (plan.objects.outcome, plan.containers.outcome) == (saved.objects, saved.containers)
    assert (plan.packings.outcome, plan.findings) == (saved.packings, saved.findings)
    assert plan.objects.outcome.new == ("X.113",)
    assert plan.packings.outcome.new == ("B-009",)
    assert {finding.code for finding in plan.findings} == {
        "object-in-two-places",
        "unknown-container",
    }


def test_the_cells_that_differ_are_shown(engine: Engine) -> None:
    """Of a changed record each field and source cell stands as it was and as it will be."""
    with reading(engine) as connection:
        plan = plan_records(connection, COMING)
    assert plan.objects.outcome.changed == (LEAD,)
    assert plan.objects.difference(LEAD) == {
        "record": {"before": {"title": f"Title of {LEAD}"}, "after": {"title": "Lead line"}},
        "source": {"before": {}, "after": {"Titel": "Lead line"}},
    }
    assert plan.museum.wanted is not None


def test_the_same_again_plans_nothing(engine: Engine) -> None:
    """A file that was taken in already changes nothing, whatever is not in it."""
    with reading(engine) as connection:
        plan = plan_records(
            connection, replace(collection(), objects=(ObjectRecord(LAMP, f"Title of {LAMP}"),))
        )
    assert plan.objects.outcome.touched == plan.containers.outcome.touched == ()
    assert (plan.packings.accepted, plan.museum.wanted) == ((), None)
