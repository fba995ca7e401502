from __future__ import annotations

import pytest

from service.errors import NotFoundError
from service.keeping.printing.pick import KindsPicked, name_lacking, pick_cards
from service.keeping.today import compose_today
from service.pages.ruler import Ruler
from service.store.handles import Connection, Engine
from service.store.open import writing
from service.store.printed.card import NewRun, describe_card
from service.store.printed.runs import save_run
from tests.keeping.made import BOX, COVER, EMPTY, GOWN, JAR, LEAD, attach_all
from tests.store.made import STAMP


def test_usual_kinds_go_where_they_belong_and_extra_ones_wherever_they_can(
    connection: Connection, ruler: Ruler
) -> None:
    """A box with an opaque lid gets no side card but on request; a garment cover has no lid."""
    usual = KindsPicked(frozenset({"lid-card", "cover-card", "side-card"}), frozenset())
    assert pick_cards(connection, ruler, [BOX, COVER], usual) == {
        (BOX, "lid-card", 1),
        (COVER, "cover-card", 1),
    }
    extra = KindsPicked(frozenset(), frozenset({"side-card"}))
    assert pick_cards(connection, ruler, [BOX, COVER], extra) == {(BOX, "side-card", 1)}


def test_tags_are_those_of_what_lies_inside(connection: Connection, ruler: Ruler) -> None:
    """Each object of the containers gets its own."""
    tags = KindsPicked(frozenset(), frozenset({"object-tag"}))
    assert pick_cards(connection, ruler, [BOX, COVER], tags) == {
        (number, "object-tag", 1) for number in (JAR, LEAD, GOWN)
    }


def test_a_container_that_is_not_there_is_told(connection: Connection, ruler: Ruler) -> None:
    """A slip in typing prints nothing else in its place."""
    with pytest.raises(NotFoundError, match="B-999"):
        pick_cards(connection, ruler, ["B-999"], KindsPicked(frozenset({"lid-card"}), frozenset()))


def test_what_nobody_printed_can_be_named(engine: Engine, ruler: Ruler) -> None:
    """What is printed already only has to be attached; where nothing is left that is told."""
    with writing(engine) as connection:
        attach_all(connection, ruler, BOX)
        waiting = compose_today(connection, ruler, [EMPTY]).standing_cards
        save_run(connection, NewRun(tuple(map(describe_card, waiting))), stamp=STAMP)
    assert {number for number, _, _ in name_lacking(engine, ruler)} == {COVER}
    with writing(engine) as connection:
        attach_all(connection, ruler, COVER)
    with pytest.raises(NotFoundError, match="missing"):
        name_lacking(engine, ruler)
