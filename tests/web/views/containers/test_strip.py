from __future__ import annotations

from service.records.record import Hazard, HazardState, ObjectRecord, PlaceRecord
from service.web.views.containers.strip import show_strip
from tests.web.views.containers.made import look

UNCHECKED, CONFIRMED = HazardState.UNCHECKED, HazardState.CONFIRMED


def test_hazards_are_merged_and_come_best_known_first() -> None:
    """One entry a hazard and state, with every object that has it, also one that is discreet."""
    objects = [
        ObjectRecord("A", hazards=(Hazard("lead", UNCHECKED),)),
        ObjectRecord("B", hazards=(Hazard("lead", CONFIRMED), Hazard("firearm", CONFIRMED))),
        ObjectRecord("C", hazards=(Hazard("lead", CONFIRMED),)),
    ]
    strip = show_strip(look(objects, [PlaceRecord(one.object_number) for one in objects]))
    lead = [(one.state, one.numbers) for one in strip.hazards if one.entry.name == "Lead"]
    assert lead == [(CONFIRMED, ("B", "C")), (UNCHECKED, ("A",))]
    assert any(one.numbers == ("B",) and one.entry.name != "Lead" for one in strip.hazards)
    assert all(one.ask for one in strip.hazards)


def test_cautions_name_every_object_that_has_them() -> None:
    """Also those that decide for the whole container."""
    objects = [ObjectRecord("A", cautions=("fragile",)), ObjectRecord("B", cautions=("fragile",))]
    strip = show_strip(look(objects, [PlaceRecord("A"), PlaceRecord("B")]))
    assert [(one.heading, one.numbers) for one in strip.cautions] == [("Fragile", ("A", "B"))]
    assert strip.questions == "Collections desk 555 0142"


def test_silence_is_told_as_silence() -> None:
    """The page says that it proves nothing."""
    assert show_strip(look([ObjectRecord("A")], [PlaceRecord("A")])).is_silent
