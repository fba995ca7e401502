"""Tests for cards kept as text."""

from __future__ import annotations

import json
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
    "no JSON": "{",
    "too deep": "[" * 100_000,
    "a list": "[]",
    "no format": '{"card":{}}',
    "another format": '{"card":{},"format":2}',
    "true is no number": '{"card":{},"format":true}',
    "no card": '{"format":1}',
    "an unknown kind": '{"card":{"kind":"flag"},"format":1}',
    "nothing in it": '{"card":{"kind":"lid-card"},"format":1}',
}


@pytest.mark.parametrize("text", WRONG.values(), ids=WRONG)
def test_what_is_no_kept_card_is_refused(text: str) -> None:
    """Any other text is refused with words, never read halfway."""
    with pytest.raises(ValueError, match="kept card"):
        card_from_text(text)


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("count_words", 7),
        ("layers", {}),
        ("grid", [1]),
        ("handling", None),
        ("grid", {"columns": 1}),
    ],
)
def test_a_value_of_another_type_is_refused(field: str, value: object) -> None:
    """A field that holds something else is named."""
    fields = said(card_as_text(CARDS["lid"])) | {field: value}
    with pytest.raises(ValueError, match="kept card"):
        card_from_text(json.dumps({"card": fields, "format": 1}))
