from __future__ import annotations

import pytest

from service.cards.kinds import (
    CARD_KINDS,
    CONTENTS_LIST,
    COVER_CARD,
    END_LABEL,
    LID_CARD,
    compose_cards,
    find_kind,
    kinds_for,
)
from service.errors import UnknownCardKindError
from service.records.record import ContainerKind, ContainerRecord, Lid
from tests.contents.made import BOX, GARMENT_COVER, MUSEUM, objects, packing


def test_kinds_are_found_by_their_code() -> None:
    """Every kind is found, and no code is used twice."""
    assert [find_kind(kind.code) for kind in CARD_KINDS] == list(CARD_KINDS)
    assert len({kind.code for kind in CARD_KINDS}) == len(CARD_KINDS)


def test_an_unknown_kind_is_refused() -> None:
    """Whoever asks for a kind that does not exist hears which there are."""
    with pytest.raises(UnknownCardKindError, match="no card kind 'tag'") as caught:
        find_kind("tag")
    assert caught.value.known == tuple(kind.code for kind in CARD_KINDS)


@pytest.mark.parametrize(
    ("kind", "lid", "codes"),
    [
        (ContainerKind.BOX, Lid.OPAQUE, ["lid-card", "end-label", "contents-list"]),
        (ContainerKind.BOX, Lid.CLEAR, ["end-label", "contents-list"]),
        (ContainerKind.BOX, Lid.NONE, ["end-label", "contents-list"]),
        (ContainerKind.TUBE, Lid.OPAQUE, ["end-label", "contents-list"]),
        (ContainerKind.DRAWER, Lid.NONE, ["end-label", "contents-list"]),
        (ContainerKind.FOLDER, Lid.OPAQUE, ["lid-card"]),
        (ContainerKind.GARMENT_COVER, Lid.OPAQUE, ["cover-card", "contents-list"]),
    ],
)
def test_what_a_container_gets(kind: ContainerKind, lid: Lid, codes: list[str]) -> None:
    """Nothing covers a clear lid, a tube has none, and a garment cover has its own card."""
    made = packing(objects(1), ContainerRecord("C-1", kind, lid=lid))
    assert [one.code for one in kinds_for(made)] == codes
    cards = compose_cards(made, MUSEUM, kinds=CARD_KINDS)
    assert list(dict.fromkeys(card.kind for card in cards)) == codes


def test_an_empty_garment_cover_gets_its_list_alone() -> None:
    """A cover card is about its garment."""
    assert kinds_for(packing((), GARMENT_COVER)) == (CONTENTS_LIST,)


def test_only_what_is_asked_for_is_composed() -> None:
    """A box with two end labels gives two, in the order of reading and not of asking."""
    made = packing(objects(1), BOX)
    cards = compose_cards(made, MUSEUM, kinds=[END_LABEL, LID_CARD, COVER_CARD])
    assert [card.kind for card in cards] == ["lid-card", "end-label", "end-label"]
    assert compose_cards(made, MUSEUM, kinds=[]) == ()
