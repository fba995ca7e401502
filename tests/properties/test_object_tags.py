"""Whatever is recorded, moved, printed and tied on: the list holds the tags a naive look finds.

The naive look words every attached tag anew from its object's record and compares fingerprints.
It asks no note and knows no marks, so a mark too few shows as a tag that the list does not hold.
"""

from __future__ import annotations

import tempfile
from pathlib import Path

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule

from service.cards.compose.asked.object_tag import compose_object_tag
from service.cards.fingerprint import fingerprint_card
from service.handling.presume import presume_hazards
from service.keeping.reprints import Remembered, list_reprints
from service.keeping.tags.today import compose_today_tags
from service.records.museum.lifting import LiftingChoices
from service.records.record import (
    Collection,
    ContainerRecord,
    Hazard,
    HazardState,
    Museum,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
    Weight,
)
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from service.store.handles import Connection
from service.store.load_records import load_museum, load_objects
from service.store.open import reading, writing
from service.store.packing.load import load_packing
from service.store.packing.save import save_packing
from service.store.printed.card import NewRun, describe_card
from service.store.printed.runs import load_attached_tags, save_run
from service.store.printed.states import mark_attached, mark_spoiled
from service.store.save_records import save_records
from service.store.today.note import heed_wording
from tests.store.made import STAMP, make_store

pytestmark = [pytest.mark.slow, pytest.mark.timeout(600)]

RULER = PangoRuler(FONTS_CONF)
BOXES = ("B-9", "B-10")
OBJECTS = ("1987.412.9", "X.112")
PATTERNS = ("", "https://portmerrow.example/o/{object_number}", "http://plain.example/")
STRICT = LiftingChoices(waist_above_kg=0.5, two_people_above_kg=3.0)

boxes, numbers = st.sampled_from(BOXES), st.sampled_from(OBJECTS)
records = st.builds(
    ObjectRecord,
    numbers,
    st.sampled_from(["", "Bait jar", "Owl"]),
    st.sampled_from(["", "taxidermy"]),
    st.sampled_from(["", "1920s"]),
    former_numbers=st.sampled_from([(), ("PM 22",)]),
    weight=st.sampled_from([None, Weight(900.0), Weight(4_000.0), Weight(4_004.0)]),
    hazards=st.sampled_from([(), (Hazard("lead", HazardState.CONFIRMED),)]),
    condition=st.sampled_from(["", "Glaze sound"]),
    catalogue_url=st.sampled_from(["", "https://portmerrow.example/lead"]),
    restricted=st.booleans(),
)
museums = st.builds(
    Museum,
    object_address=st.sampled_from(PATTERNS),
    show_location=st.booleans(),
    presume_hazards=st.booleans(),
    lifting=st.sampled_from([LiftingChoices(), STRICT]),
)


class TagMachine(RuleBasedStateMachine):
    """Drives a store, and looks at every attached tag after each step."""

    @initialize()
    def begin(self) -> None:
        """Record two objects and two boxes; nothing is packed, nothing is printed."""
        self.folder = tempfile.TemporaryDirectory()
        self.engine = make_store(Path(self.folder.name))
        self.remembered = Remembered()
        self.made: list[int] = []
        objects = tuple(map(ObjectRecord, OBJECTS))
        self.save(Collection(Museum(), objects, tuple(map(ContainerRecord, BOXES))))

    def save(self, collection: Collection) -> None:
        """Take records in, as an import does."""
        with writing(self.engine) as connection:
            save_records(connection, collection, stamp=STAMP)

    @rule(record=records)
    def describe(self, record: ObjectRecord) -> None:
        """Describe an object otherwise, or the same."""
        self.save(Collection(objects=(record,)))

    @rule(museum=museums)
    def choose(self, museum: Museum) -> None:
        """Let the museum choose otherwise; one of its address patterns cannot be used."""
        self.save(Collection(museum))

    @rule(box=boxes, lying=st.sets(numbers))
    def pack(self, box: str, lying: set[str]) -> None:
        """Pack these objects into a box, each as a part of its own so that none is refused."""
        places = tuple(PlaceRecord(number, (box,)) for number in sorted(lying))
        with writing(self.engine) as connection:
            seen = load_packing(connection, box).revision
            wanted = PackingRecord(box, places=places)
            save_packing(connection, wanted, expected_revision=seen, stamp=STAMP)

    @rule(tagged=st.sets(numbers, min_size=1), is_attached=st.booleans())
    def print_tags(self, tagged: set[str], *, is_attached: bool) -> None:
        """Print tags as the records are; they are tied on, or lie about."""
        with writing(self.engine) as connection:
            today = compose_today_tags(connection, RULER, sorted(tagged))
            if not today.cards:
                return
            run = NewRun(tuple(map(describe_card, today.cards.values())))
            for card in save_run(connection, run, stamp=STAMP):
                self.made.append(card.card_id)
                if is_attached:
                    mark_attached(connection, card.card_id, stamp=STAMP)

    @rule(which=st.integers(0, 99), is_spoiled=st.booleans())
    def handle(self, which: int, *, is_spoiled: bool) -> None:
        """Tie any tag on that was ever printed, or spoil it for good."""
        if not self.made:
            return
        card = self.made[which % len(self.made)]
        with writing(self.engine) as connection:
            if is_spoiled:
                self.made.remove(card)
                mark_spoiled(connection, card, stamp=STAMP)
            else:
                mark_attached(connection, card, stamp=STAMP)

    @rule()
    def upgrade(self) -> None:
        """Another program takes the store over, which may word everything otherwise."""
        with writing(self.engine) as connection:
            heed_wording(connection, "0" * 64)

    @invariant()
    def the_list_is_what_a_naive_look_finds(self) -> None:
        """Exactly the attached tags that today's wording does not give are listed, with reasons."""
        if not hasattr(self, "engine"):
            return
        found = list_reprints(self.engine, RULER, remembered=self.remembered)
        assert found.out_of_date == list_reprints(self.engine, RULER).out_of_date
        with reading(self.engine) as connection:
            wrong = _look(connection)
        listed = {one.printed.card_id for one in found.out_of_date}
        assert listed == wrong
        assert all(one.reprint.changes for one in found.out_of_date)
        assert not [one for one in found.unattached if one.kind == "object-tag"]

    def teardown(self) -> None:
        """Close the store."""
        if hasattr(self, "engine"):
            self.engine.dispose()
            self.folder.cleanup()


def _look(connection: Connection) -> set[int]:
    """Word the tag of every object, and name the attached cards that say something else."""
    museum = load_museum(connection)
    recorded = Collection(museum, tuple(load_objects(connection)))
    presumed, _ = presume_hazards(recorded)
    today: dict[str, str] = {}
    for record in presumed.objects:
        usable = not museum.object_address.startswith("http:") or record.catalogue_url
        if usable:
            today[record.object_number] = fingerprint_card(compose_object_tag(record, museum))
    return {
        card.card_id
        for card in load_attached_tags(connection)
        if card.made.fingerprint != today.get(card.made.object_number)
    }


TestTags = TagMachine.TestCase
# Each step words cards and asks a database, so there are fewer of them than elsewhere.
TestTags.settings = settings(max_examples=40, stateful_step_count=20, deadline=None)
