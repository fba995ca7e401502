"""Tests for a collection to inked cards."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.kinds import COVER_CARD, END_LABEL
from service.errors import ContentsError
from service.pipeline.options import PrintOptions
from service.pipeline.printing.ink import ink_collection
from service.pipeline.ready import Workshop, tell_nobody
from service.records.record import Collection


@pytest.mark.print
def test_cards_of_a_kind_on_a_stock_go_together(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """Both end labels are one group, and each of their faces has a plate on the shelf."""
    options = PrintOptions(kinds=(END_LABEL,))
    inked = ink_collection(collection, photos, options, workshop, on_progress=tell_nobody)
    (group,) = inked.groups
    assert [card.kind for card in group] == [END_LABEL, END_LABEL]
    assert all(inked.shelf.holds(face.key) for card in group for face in card.faces)


def test_nothing_to_print_is_told(collection: Collection, workshop: Workshop) -> None:
    """No container, and containers that get no such card, are told apart."""
    for records, kinds, words in (
        (replace(collection, containers=(), packings=()), (), "no container"),
        (collection, (COVER_CARD,), "kinds asked for"),
    ):
        with pytest.raises(ContentsError, match=words):
            ink_collection(
                records, {}, PrintOptions(kinds=kinds), workshop, on_progress=tell_nobody
            )
