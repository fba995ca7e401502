"""Tests for what a print run is made from."""

from __future__ import annotations

import pytest

from service.errors import NotFoundError
from service.keeping.desk import Desk
from service.keeping.printing.wanted import load_wanted
from service.pipeline.options import PrintOptions, object_tag_keys
from tests.keeping.made import BOX, COVER, GOWN, JAR, LEAD


def test_only_what_the_cards_need_is_loaded(desk: Desk) -> None:
    """One card of one box brings its objects and nobody else's; no choice brings everything."""
    only = PrintOptions(only=frozenset({(BOX, "lid-card", 1)}))
    wanted = load_wanted(desk, only)
    assert {one.object_number for one in wanted.collection.objects} == {JAR, LEAD}
    assert wanted.options.containers == {BOX}
    everything = load_wanted(desk, PrintOptions())
    assert {one.container_number for one in everything.collection.containers} >= {BOX, COVER}


def test_a_tag_brings_its_object_alone(desk: Desk) -> None:
    """No container is needed for it; an object that is not in the store is refused."""
    wanted = load_wanted(desk, PrintOptions(only=object_tag_keys([GOWN])))
    assert [one.object_number for one in wanted.collection.objects] == [GOWN]
    with pytest.raises(NotFoundError, match=r"X\.9"):
        load_wanted(desk, PrintOptions(only=object_tag_keys(["X.9"])))
