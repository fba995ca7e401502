from __future__ import annotations

from dataclasses import replace

import pytest

from service.findings import Finding, Severity, Where
from service.handling.hazards import RULES as HAZARD_RULES
from service.handling.presume import PRESUMPTIONS, RULES, presume_for, presume_hazards
from service.handling.rule import Evidence
from service.records.codes import HAZARD_CODES
from service.records.record import Collection, Hazard, HazardState, Museum, ObjectRecord

OWL = ObjectRecord("1931.4", "Owl under a dome", "taxidermy", "1920s")
SPOON = ObjectRecord("1931.5", "Spoon", "spoon", "1920s", materials=("silver",))
SAYS = "Taxidermy and skins are presumed to hold arsenic, where they are not dated after 1980"


def test_a_presumption_is_added_and_told() -> None:
    """The hazard is presumed and names its rule; the finding names object, rule and what to do."""
    collection, findings = presume_hazards(Collection(objects=(OWL, SPOON)))
    note = f"{SAYS} (presume-arsenic-taxidermy)"
    hazard = Hazard("arsenic", HazardState.PRESUMED, note=note)
    assert collection.objects == (replace(OWL, hazards=(hazard,)), SPOON)
    assert findings == (
        Finding(
            "hazard-presumed",
            Severity.NOTE,
            Where(object_number="1931.4"),
            f"Arsenic, presumed of 1931.4, is not recorded. {SAYS}. (presume-arsenic-taxidermy)",
            "Open nothing to find out: have it checked by those who may, and record the result.",
        ),
    )


@pytest.mark.parametrize("state", list(HazardState))
def test_what_is_recorded_wins(state: HazardState) -> None:
    """A recorded hazard stays as it is, in whatever state, and nothing is added to it."""
    recorded = replace(OWL, hazards=(Hazard("arsenic", state, method="XRF"),))
    collection = Collection(objects=(recorded,))
    assert presume_hazards(collection) == (collection, ())


def test_other_records_stay_before_what_is_presumed() -> None:
    """A hazard of another kind answers nothing, and keeps its place."""
    mould = Hazard("mould", HazardState.CONFIRMED)
    collection, _ = presume_hazards(Collection(objects=(replace(OWL, hazards=(mould,)),)))
    (record,) = collection.objects
    assert [hazard.code for hazard in record.hazards] == ["mould", "arsenic"]
    assert record.hazards[0] is mould


@pytest.mark.parametrize(
    ("state", "presumed"),
    [
        (HazardState.CONFIRMED, []),
        (HazardState.PRESUMED, ["nitrate-film"]),
        (HazardState.UNCHECKED, ["nitrate-film"]),
    ],
)
def test_only_what_is_confirmed_answers_for_another(
    state: HazardState, presumed: list[str]
) -> None:
    """Film confirmed as acetate is no longer presumed nitrate; film only thought so still is."""
    film = ObjectRecord("1", "Harbour", "film negative", "1930")
    recorded = replace(film, hazards=(Hazard("acetate-film", state),))
    assert [one.hazard for one in presume_for(recorded)] == presumed


def test_the_museum_can_turn_presumptions_off() -> None:
    """Then nothing is added; what is recorded stays and prints."""
    lead = replace(SPOON, hazards=(Hazard("lead", HazardState.UNCHECKED),))
    collection = Collection(Museum(presume_hazards=False), (OWL, lead))
    assert presume_hazards(collection) == (collection, ())


def test_each_hazard_is_presumed_once() -> None:
    """Two rules on one hazard add it once, with the first of them."""
    mask = ObjectRecord("1", "Gas mask", "gas mask", "1940", materials=("rubber", "asbestos"))
    assert [one.rule.code for one in presume_for(mask)] == ["presume-asbestos-named"]


def test_what_no_rule_is_about_stays_unknown() -> None:
    """Silence adds nothing, and an empty record is no reason to presume."""
    assert presume_for(SPOON) == ()
    assert presume_for(ObjectRecord("1")) == ()


def test_rules_are_told_apart() -> None:
    """Codes stand once among all rules on hazards, and every hazard presumed is in the list."""
    codes = [rule.code for rule in (*RULES, *HAZARD_RULES)]
    assert len(set(codes)) == len(codes)
    assert {one.hazard for one in PRESUMPTIONS} <= set(HAZARD_CODES)
    for rule in RULES:
        assert rule.says.endswith(".")
        assert bool(rule.source) == (rule.evidence is Evidence.PUBLISHED)


@pytest.mark.parametrize(
    ("record", "hazard", "answer"),
    [
        (ObjectRecord("1", "Syringe", "syringe"), "needles", "sharps"),
        (ObjectRecord("1", "Negative", "film negative", "1930"), "nitrate-film", "acetate-film"),
        (ObjectRecord("1", "Nitrate film", "nitrate film"), "nitrate-film", "acetate-film"),
        (ObjectRecord("1", "Safety film", "safety film"), "acetate-film", "nitrate-film"),
        (ObjectRecord("1", materials=("celluloid",)), "celluloid", "nitrate-film"),
        (ObjectRecord("1", "Crab", "spirit specimen"), "fluid-preserved", "unknown-fluid"),
        (ObjectRecord("1", "Unknown fluid", "jar"), "unknown-fluid", "fluid-preserved"),
        (ObjectRecord("1", "Chest", "medicine chest"), "medicine", "controlled-drug"),
        (ObjectRecord("1", "Chest", "medicine chest"), "medicine", "poison"),
        (ObjectRecord("1", "Bottle", "poison bottle"), "poison", "strychnine"),
        (ObjectRecord("1", "Bottle", "poison bottle"), "poison", "cyanide"),
        (ObjectRecord("1", "Bottle", "poison bottle"), "poison", "arsenic"),
    ],
)
def test_what_was_confirmed_answers_the_question(
    record: ObjectRecord, hazard: str, answer: str
) -> None:
    """A film that was tested is of one kind; a mere presumption of the other answers nothing."""
    confirmed = replace(record, hazards=(Hazard(answer, HazardState.CONFIRMED),))
    presumed = replace(record, hazards=(Hazard(answer, HazardState.PRESUMED),))
    assert hazard in {one.hazard for one in presume_for(record)}
    assert hazard not in {one.hazard for one in presume_for(confirmed)}
    assert hazard in {one.hazard for one in presume_for(presumed)}
