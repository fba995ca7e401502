"""Tests for cards kept as text."""

from __future__ import annotations

import json
import re
from dataclasses import replace

import pytest

from service.cards.kept_text import card_as_text, card_from_text
from tests.cards.changes.cases import KINDS, collection, compose

CARDS = {kind: compose(kind, collection()) for kind in KINDS}


@pytest.mark.parametrize("kind", CARDS)
def test_a_card_comes_back_whole(kind: str) -> None:
    """Every kind of card is equal to what it was; the text is canonical."""
    text = card_as_text(CARDS[kind])
    assert card_from_text(text) == CARDS[kind]
    canonical = json.dumps(
        json.loads(text), sort_keys=True, separators=(",", ":"), ensure_ascii=False
    )
    assert text == canonical


def said(text: str) -> dict[str, object]:
    """Give the fields of the card in a kept text."""
    fields = json.loads(text)["card"]
    assert isinstance(fields, dict)
    return fields


def test_fields_that_came_or_went_later_are_no_trouble() -> None:
    """A card kept by another version is read: what it lacks has a default."""
    fields = said(card_as_text(CARDS["lid"]))
    head = fields["head"]
    assert isinstance(head, dict)
    del head["query"]
    older = json.dumps({"card": fields | {"smell": "of tar"}, "format": 1})
    printed = CARDS["lid"]
    assert card_from_text(older) == replace(printed, head=replace(printed.head, query=""))


WRONG = {
    "no JSON": ("{", "The text of a kept card is not JSON."),
    "too deep": ("[" * 100_000, "The text of a kept card is not JSON."),
    "a list": ("[]", "A kept card has [] for text."),
    "no format": ('{"card":{}}', "has format None"),
    "another format": ('{"card":{},"format":2}', "has format 2; this program reads format 1"),
    "true is no number": ('{"card":{},"format":true}', "has format True"),
    "no card": ('{"format":1}', "A kept card has None for card."),
    "no kind": ('{"card":{},"format":1}', "A kept card has None for kind."),
    "an unknown kind": ('{"card":{"kind":"flag"},"format":1}', "is of kind 'flag'"),
    "nothing in it": (
        '{"card":{"kind":"lid-card"},"format":1}',
        "A kept card lacks LidCard.head.",
    ),
}


@pytest.mark.parametrize(("text", "words"), WRONG.values(), ids=WRONG)
def test_what_is_no_kept_card_is_refused(text: str, words: str) -> None:
    """Any other text is refused with words that name what is wrong, never read halfway."""
    with pytest.raises(ValueError, match=re.escape(words)):
        card_from_text(text)


HANDLING = {"lift": {"figure_kg": "5.6", "qualifier": "weighed", "advice": "Keep close."}}
SHOWN = {"object_number": "X.112", "title": "Lamp", "photo": "", "photo_words": ""}


def _layers(**fields: object) -> list[object]:
    """Give one layer with one object, as they are kept."""
    return [{"heading": "", "objects": [SHOWN | fields]}]


FIELDS: dict[str, tuple[str, object, str]] = {
    "a number for a text": ("count_words", 7, "A kept card has 7 for LidCard.count_words."),
    "fields for a list": ("layers", {}, "A kept card has {} for LidCard.layers."),
    "a list for fields": ("grid", [1], "A kept card has [1] for Grid."),
    "nothing for fields": ("handling", None, "A kept card has None for Handling."),
    "half of a part": ("grid", {"columns": 1}, "A kept card lacks Grid.rows."),
    "a number in a list of texts": (
        "handling",
        HANDLING | {"limits": ["Heavy end: left", 7]},
        "A kept card has 7 for Handling.limits.",
    ),
    "a text in a list of parts": ("layers", ["top"], "A kept card has 'top' for CardLayer."),
    "half of a cell": (
        "layers",
        _layers(cell=[1]),
        "A kept card has 1 values for CardObject.cell.",
    ),
    "more than a cell": (
        "layers",
        _layers(cell=[1, 2, 3]),
        "A kept card has 3 values for CardObject.cell.",
    ),
    "a text in a cell": (
        "layers",
        _layers(cell=[1, "2"]),
        "A kept card has '2' for CardObject.cell.",
    ),
}


@pytest.mark.parametrize(("field", "value", "words"), FIELDS.values(), ids=FIELDS)
def test_a_value_of_another_type_is_refused(field: str, value: object, words: str) -> None:
    """A field that holds something else is named, however deep it lies."""
    fields = said(card_as_text(CARDS["lid"])) | {field: value}
    with pytest.raises(ValueError, match=re.escape(words)):
        card_from_text(json.dumps({"card": fields, "format": 1}))
