"""Whatever is recorded, packed, printed and attached: the reprint list is what a model predicts.

The model shares nothing with the service. It keeps the facts a card of each kind shows, as plain
tuples, and calls a card out of date when the facts are no longer those it was printed from.
"""

from __future__ import annotations

import tempfile
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule

from service.cards.kinds import CONTENTS_LIST, END_LABEL, LID_CARD, CardKind
from service.errors import PackedElsewhereError, PackingConflictError
from service.keeping.printing.attach import attach_card
from service.keeping.reprints import Remembered, list_reprints
from service.keeping.today import compose_today
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
from service.store.open import writing
from service.store.packing.move import Move, move_object
from service.store.packing.save import save_packing
from service.store.printed.card import NewRun, describe_card
from service.store.printed.runs import save_run
from service.store.save_records import save_records
from tests.store.made import STAMP, make_store

pytestmark = [pytest.mark.slow, pytest.mark.timeout(600)]

RULER = PangoRuler(FONTS_CONF)
BOXES = ("B-9", "B-10", "B-11")
OBJECTS = ("1987.412.9", "1987.412.10", "X.112", "PMM.77.3")
PATTERN = "https://{}.portmerrow.example/c/{{container_number}}"

boxes, numbers = st.sampled_from(BOXES), st.sampled_from(OBJECTS)
titles = st.sampled_from(["", "Bait jar", "Lead line"])
states = st.none() | st.sampled_from(["presumed", "confirmed"])
weights_kg = st.none() | st.sampled_from([1, 4, 9])
layers = st.integers(1, 3)

Key = tuple[str, str, int]
Facts = tuple[object, ...]


@dataclass
class Model:
    """What a careful person would write down: one line an object, one a box."""

    title: dict[str, str] = field(default_factory=lambda: dict.fromkeys(OBJECTS, ""))
    arsenic: dict[str, str | None] = field(default_factory=lambda: dict.fromkeys(OBJECTS))
    weight_kg: dict[str, int | None] = field(default_factory=lambda: dict.fromkeys(OBJECTS))
    box_title: dict[str, str] = field(default_factory=lambda: dict.fromkeys(BOXES, ""))
    box_kg: dict[str, int | None] = field(default_factory=lambda: dict.fromkeys(BOXES))
    host: str = "one"
    lying: dict[str, list[tuple[str, int]]] = field(
        default_factory=lambda: {box: [] for box in BOXES}
    )
    revision: dict[str, int] = field(default_factory=lambda: dict.fromkeys(BOXES, 0))
    reason: dict[str, str] = field(default_factory=lambda: dict.fromkeys(BOXES, ""))
    attached: dict[Key, Facts] = field(default_factory=dict)

    def facts(self, key: Key) -> Facts:
        """Give all that this card shows."""
        box, kind, _ = key
        inside = sorted(self.lying[box], key=lambda item: item[1])
        head = (self.box_title[box], self.host)
        hazards = tuple((name, self.arsenic[name]) for name, _ in inside if self.arsenic[name])
        known = [self.weight_kg[name] for name, _ in inside]
        total = sum(kg for kg in (*known, self.box_kg[box]) if kg)
        lift = (total, known.count(None), len(known), self.box_kg[box] is None)
        if kind == "end-label":
            return (*head, hazards, lift)
        spread = len({layer for _, layer in inside}) > 1
        lines = tuple((name, self.title[name], layer if spread else 0) for name, layer in inside)
        if kind == "lid-card":
            return (*head, hazards, lift, lines)
        return (*head, hazards, lift, lines, tuple(known), self.reason[box])


class StoreMachine(RuleBasedStateMachine):
    """Drives a store and the model side by side."""

    @initialize()
    def begin(self) -> None:
        """Record everything, pack nothing."""
        self.folder = tempfile.TemporaryDirectory()
        self.engine = make_store(Path(self.folder.name))
        self.remembered = Remembered()
        self.model = Model()
        self.records = {number: ObjectRecord(number) for number in OBJECTS}
        self.containers = {box: ContainerRecord(box) for box in BOXES}
        self.save(
            Collection(
                Museum("Port Merrow Museum", container_address=PATTERN.format("one")),
                tuple(self.records.values()),
                tuple(self.containers.values()),
            )
        )

    def save(self, collection: Collection) -> None:
        """Take records in, as an import does."""
        with writing(self.engine) as connection:
            save_records(connection, collection, stamp=STAMP)

    @rule(number=numbers, title=titles, state=states, weight_kg=weights_kg)
    def describe(self, number: str, title: str, state: str | None, weight_kg: int | None) -> None:
        """Describe an object otherwise, or the same."""
        hazards = (Hazard("arsenic", HazardState(state)),) if state else ()
        weight = Weight(weight_kg * 1000.0) if weight_kg else None
        self.save(
            Collection(objects=(ObjectRecord(number, title, weight=weight, hazards=hazards),))
        )
        self.model.title[number] = title
        self.model.arsenic[number] = state
        self.model.weight_kg[number] = weight_kg

    @rule(box=boxes, title=titles, tare_kg=weights_kg)
    def describe_box(self, box: str, title: str, tare_kg: int | None) -> None:
        """Give a box another title or weight; a location that is not printed changes as well."""
        tare = Weight(tare_kg * 1000.0) if tare_kg else None
        location = ("Store 2", f"Shelf {len(title)}")
        self.save(
            Collection(
                containers=(ContainerRecord(box, title=title, location=location, tare=tare),)
            )
        )
        self.model.box_title[box] = title
        self.model.box_kg[box] = tare_kg

    @rule(host=st.sampled_from(["one", "two"]))
    def move_the_catalogue(self, host: str) -> None:
        """Print another address from now on."""
        pattern = PATTERN.format(host)
        self.save(Collection(Museum("Port Merrow Museum", container_address=pattern)))
        self.model.host = host

    @rule(box=boxes, number=numbers, layer=layers, reason=st.sampled_from(["", "too heavy"]))
    def pack(self, box: str, number: str, layer: int, reason: str) -> None:
        """Put an object into a box, or into another layer of it; what lies elsewhere is refused."""
        lying = [item for item in self.model.lying[box] if item[0] != number] + [(number, layer)]
        wanted = PackingRecord(
            box, places=tuple(PlaceRecord(n, layer=at) for n, at in lying), reason=reason
        )
        elsewhere = any(
            number == name for other in BOXES if other != box for name, _ in self.model.lying[other]
        )
        try:
            with writing(self.engine) as connection:
                save_packing(
                    connection, wanted, expected_revision=self.model.revision[box], stamp=STAMP
                )
        except PackedElsewhereError:
            assert elsewhere
            return
        assert not elsewhere
        self.model.lying[box] = lying
        self.model.reason[box] = reason
        self.model.revision[box] += 1

    @rule(box=boxes)
    def pack_blindly(self, box: str) -> None:
        """Somebody who has not seen the current state changes nothing."""
        stale, was_refused = self.model.revision[box] - 1, False
        try:
            with writing(self.engine) as connection:
                save_packing(connection, PackingRecord(box), expected_revision=stale, stamp=STAMP)
        except PackingConflictError:
            was_refused = True
        assert was_refused

    @rule(number=numbers, box=boxes, layer=layers)
    def move(self, number: str, box: str, layer: int) -> None:
        """Move an object to another box: both get a revision."""
        lies_in = [one for one in BOXES if number in dict(self.model.lying[one])]
        if not lies_in or lies_in[0] == box:
            return
        (left,) = lies_in
        move = Move(
            PlaceRecord(number, layer=layer),
            left,
            self.model.revision[left],
            box,
            self.model.revision[box],
        )
        with writing(self.engine) as connection:
            move_object(connection, move, stamp=STAMP)
        self.model.lying[left] = [item for item in self.model.lying[left] if item[0] != number]
        self.model.lying[box].append((number, layer))
        for one in (left, box):
            self.model.revision[one] += 1
            self.model.reason[one] = ""

    @rule(
        box=boxes,
        kind=st.sampled_from([LID_CARD, END_LABEL, CONTENTS_LIST]),
        is_attached=st.booleans(),
    )
    def print_and_attach(self, box: str, kind: CardKind, *, is_attached: bool) -> None:
        """Print the cards of one kind of a box; they are attached, or lie about."""
        with writing(self.engine) as connection:
            today = compose_today(connection, RULER, [box])
            cards = [card for card in today.cards.values() if card.kind == kind.code]
            made = tuple(describe_card(card) for card in cards)
            printed = save_run(connection, NewRun(made), stamp=STAMP)
            for card in printed if is_attached else ():
                attach_card(connection, card.card_id, stamp=STAMP)
        for card in printed if is_attached else ():
            key = (box, card.made.kind, card.made.side)
            self.model.attached[key] = self.model.facts(key)

    @invariant()
    def the_list_is_what_the_model_says(self) -> None:
        """Exactly the cards whose facts have changed are on the list, each with a reason."""
        if not hasattr(self, "engine"):
            return
        found = list_reprints(self.engine, RULER, remembered=self.remembered).out_of_date
        # What was remembered of earlier lists changes nothing.
        assert found == list_reprints(self.engine, RULER).out_of_date
        wrong = {
            key for key, facts in self.model.attached.items() if facts != self.model.facts(key)
        }
        keys = [(one.reprint.container_number, one.reprint.kind, one.reprint.side) for one in found]
        assert sorted(keys) == sorted(wrong)
        assert all(one.reprint.changes for one in found)

    def teardown(self) -> None:
        """Close the store."""
        if hasattr(self, "engine"):
            self.engine.dispose()
            self.folder.cleanup()


TestStore = StoreMachine.TestCase
# Each step words cards and asks a database, so there are fewer of them than elsewhere.
TestStore.settings = settings(max_examples=30, stateful_step_count=12, deadline=None)
