from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date

import pytest

from service.cards.compose.contents_list import compose_contents_list
from service.cards.compose.end_label import compose_end_labels
from service.cards.compose.lid_card import compose_lid_card
from service.cards.fingerprint import (
    LETTERS,
    NUMBER_OF_LETTERS,
    check_letters,
    fingerprint_card,
    seal_card,
)
from service.contents.packing import Packing
from service.records.museum.lifting import LiftingChoices
from service.records.record import ObjectRecord, PhotoReference, Weight
from tests.contents.made import BOX, MUSEUM, hazard, objects, packing

ONE = objects(1)[0]
TARED = replace(BOX, tare=Weight(500.0))
PACKED = packing([ONE], TARED)


def fingerprint(made: Packing) -> str:
    """Give the fingerprint of a packing's lid card."""
    return fingerprint_card(compose_lid_card(made, MUSEUM))


@pytest.mark.parametrize(
    "made",
    [
        replace(PACKED, revision=9),
        replace(PACKED, packed_on=date(2027, 1, 1)),
        replace(PACKED, packed_by="J. Marsh"),
        replace(PACKED, reason="checked"),
    ],
    ids=["revision", "day", "person", "reason"],
)
def test_what_leaves_the_fingerprint_alone(made: Packing) -> None:
    """Who packed when, and how often, is not what the card says."""
    assert fingerprint(made) == fingerprint(PACKED)


@pytest.mark.parametrize(
    ("change", "differs"),
    [
        (lambda one: replace(one, title="Pin"), True),
        (lambda one: replace(one, hazards=(hazard("lead"),)), True),
        (lambda one: replace(one, photos=(PhotoReference("other.jpg"),)), True),
        (lambda one: replace(one, cautions=("fragile",)), True),
        (lambda one: replace(one, weight=Weight(920.0)), True),
        (lambda one: replace(one, weight=None), True),
        (lambda one: replace(one, weight=Weight(121.0)), False),
        (lambda one: replace(one, condition="Stable"), False),
    ],
    ids=["title", "hazard", "photo", "caution", "weight", "no weight", "unseen weight", "unsaid"],
)
def test_what_changes_the_fingerprint(
    change: Callable[[ObjectRecord], ObjectRecord], *, differs: bool
) -> None:
    """What the card prints counts, to the figure it prints; what it leaves out does not."""
    assert (fingerprint(packing([change(ONE)], TARED)) != fingerprint(PACKED)) is differs


def test_sealing_again_changes_nothing() -> None:
    """Letters and query are no part of what they are made from."""
    card = compose_lid_card(PACKED, MUSEUM)
    assert seal_card(card, dated=True) == card
    assert card.head.query == f"r=3&k={card.head.check_letters}"


def test_an_end_label_carries_no_revision_in_its_address() -> None:
    """It stays up while the packing changes; its letters are those of its side."""
    labels = compose_end_labels(PACKED, MUSEUM)
    assert {label.head.query for label in labels} == {""}
    assert all(label.head.check_letters for label in labels)


def test_kinds_have_fingerprints_of_their_own() -> None:
    """Two cards of one container are told apart by their letters."""
    listed = compose_contents_list(PACKED, MUSEUM)
    assert fingerprint_card(listed) != fingerprint(PACKED)
    assert len(fingerprint_card(listed)) == 64


def test_the_alphabet_of_check_letters() -> None:
    """Twenty capitals, each once; no vowel, and nothing that passes for a figure."""
    assert len(LETTERS) == len(set(LETTERS)) == 20
    assert not set(LETTERS) & set("AEIOUQ0123456789")


def test_check_letters_use_the_whole_alphabet() -> None:
    """Every letter turns up at every place; the letters follow from the fingerprint alone."""
    made = [check_letters(f"{number * 2654435761 % 2**64:016x}{'0' * 48}") for number in range(999)]
    for place in range(NUMBER_OF_LETTERS):
        assert {letters[place] for letters in made} == set(LETTERS)
    assert check_letters("0" * 64) == LETTERS[0] * 4
    assert check_letters("0" * 15 + "1" + "f" * 48) == LETTERS[1] + LETTERS[0] * 3


@pytest.mark.parametrize(
    ("choices", "differs"),
    [
        (LiftingChoices(not_high_above_kg=0.5), True),
        (LiftingChoices(two_people_above_kg=0.6, not_high_above_kg=0.5, waist_above_kg=0.6), True),
        (LiftingChoices(waist_above_kg=6.0), False),
        (LiftingChoices(twist_deg=90.0), False),
    ],
    ids=["another tier", "two people", "above its weight", "same tier"],
)
def test_a_lifting_choice_counts_where_it_changes_the_advice(
    choices: LiftingChoices, *, differs: bool
) -> None:
    """A changed limit makes the cards wrong that now advise otherwise, and no others."""
    museum = replace(MUSEUM, lifting=choices)
    for before, after in (
        (compose_lid_card(PACKED, MUSEUM), compose_lid_card(PACKED, museum)),
        (compose_contents_list(PACKED, MUSEUM), compose_contents_list(PACKED, museum)),
        (compose_end_labels(PACKED, MUSEUM)[0], compose_end_labels(PACKED, museum)[0]),
    ):
        assert (fingerprint_card(before) != fingerprint_card(after)) is differs
