from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.kinds import (
    CARD_KINDS,
    CONTENTS_LIST,
    COVER_CARD,
    END_LABEL,
    LID_CARD,
    WARNING_LABEL,
    compose_cards,
    find_kind,
    kinds_for,
    kinds_on_request,
)
from service.errors import UnknownCardKindError
from service.records.record import ContainerKind, ContainerRecord, Lid
from tests.contents.made import BOX, GARMENT_COVER, MUSEUM, hazard, objects, packing


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
        (ContainerKind.BOX, Lid.CLEAR, ["end-label", "side-card", "contents-list"]),
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
    cards = compose_cards(made, MUSEUM)
    assert list(dict.fromkeys(card.kind for card in cards)) == codes


def test_an_empty_garment_cover_gets_its_list_alone() -> None:
    """A cover card is about its garment."""
    assert kinds_for(packing((), GARMENT_COVER)) == (CONTENTS_LIST,)


def test_only_what_is_asked_for_is_composed() -> None:
    """A box with two end labels gives two, in the order of reading and not of asking."""
    made = packing(objects(1), BOX)
    cards = compose_cards(made, MUSEUM, kinds=[END_LABEL, LID_CARD, COVER_CARD])
    assert [card.kind for card in cards] == ["lid-card", "end-label", "end-label"]


@pytest.mark.parametrize(
    ("container", "codes"),
    [
        (BOX, ["side-card", "warning-label", "object-tag"]),
        (replace(BOX, lid=Lid.CLEAR), ["warning-label", "object-tag"]),
        (ContainerRecord("T-2", ContainerKind.TUBE), ["side-card", "warning-label", "object-tag"]),
        (ContainerRecord("F-1", ContainerKind.FOLDER), ["warning-label", "object-tag"]),
        (GARMENT_COVER, ["warning-label", "shoulder-tag", "object-tag"]),
    ],
    ids=["box", "clear lid", "tube", "folder", "garment cover"],
)
def test_what_a_container_gets_on_request(container: ContainerRecord, codes: list[str]) -> None:
    """What is only asked for is not composed unasked, and comes once it is."""
    made = packing([replace(objects(1)[0], hazards=(hazard("lead"),))], container)
    assert [one.code for one in kinds_on_request(made)] == codes
    assert not {card.kind for card in compose_cards(made, MUSEUM)} & set(codes)
    asked = compose_cards(made, MUSEUM, kinds=[find_kind(code) for code in codes])
    assert [card.kind for card in asked] == codes


def test_nothing_to_warn_of_gives_no_label() -> None:
    """A container without hazards has no warning label, an empty one no tags."""
    assert WARNING_LABEL not in kinds_on_request(packing(objects(1), BOX))
    assert kinds_on_request(packing((), GARMENT_COVER)) == ()
    assert compose_cards(packing(objects(1), BOX), MUSEUM, kinds=[WARNING_LABEL]) == ()


def test_standing_kinds_are_those_that_are_missed() -> None:
    """A kind that is only asked for is never expected."""
    optional = {kind.code for kind in CARD_KINDS if not kind.standing}
    assert optional == {"warning-label", "shoulder-tag", "object-tag"}
