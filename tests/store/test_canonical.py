from __future__ import annotations

import json
from dataclasses import dataclass, fields, replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.cards.card import ContentsList, CoverCard, EndLabel, LidCard
from service.cards.kinds import CARD_KINDS, compose_cards
from service.contents.packing import Packing
from service.errors import UnstorableTextError
from service.records.record import (
    ContainerKind,
    ContainerRecord,
    Museum,
    ObjectRecord,
    PackingRecord,
    Weight,
)
from service.store.canonical import (
    check_text,
    compare_json,
    decode_record,
    dump_json,
    encode_record,
    encode_source,
)
from tests.store.strategies import records_of

KINDS = (ObjectRecord, ContainerRecord, PackingRecord, Museum)
CARDS = (LidCard, EndLabel, CoverCard, ContentsList)


@pytest.mark.parametrize("kind", [*KINDS, *CARDS], ids=lambda kind: kind.__name__)
@given(data=st.data())
def test_records_come_back_as_they_were(kind: type, data: st.DataObject) -> None:
    """Whatever a record or card holds in any field, reading gives it back and writing repeats."""
    record = data.draw(records_of(kind))
    text = encode_record(record)
    source = encode_source(record.source) if hasattr(record, "source") else ""
    again: object = decode_record(kind, text, source=source)
    assert [getattr(again, f.name) for f in fields(kind)] == [
        getattr(record, f.name) for f in fields(kind)
    ]
    assert encode_record(again) == text


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.__name__)
@given(data=st.data())
def test_different_records_have_different_texts(kind: type, data: st.DataObject) -> None:
    """Two records have one text exactly when they are equal."""
    one, other = data.draw(records_of(kind)), data.draw(records_of(kind))
    assert (encode_record(one) == encode_record(other)) == (one == other)


def test_text_is_canonical() -> None:
    """Keys are sorted, blanks and defaults left out, and the source row is kept apart."""
    record = ObjectRecord("1", "Tŷ", weight=Weight(5), source={"b": "2", "a": "1"})
    assert encode_record(record) == ('{"object_number":"1","title":"Tŷ","weight":{"weight_g":5.0}}')
    assert encode_source(record.source) == '{"a":"1","b":"2"}'


def test_unknown_fields_of_older_texts_do_no_harm() -> None:
    """A text that lacks a field gives its default, so that a new field changes no record."""
    assert decode_record(ObjectRecord, '{"object_number":"1"}') == ObjectRecord("1")


@pytest.mark.parametrize("text", ["a\0b", "half \ud800", "\udfff"], ids=ascii)
def test_unstorable_text_is_refused(text: str) -> None:
    """What PostgreSQL or UTF-8 cannot hold is refused wherever it stands in a record."""
    with pytest.raises(UnstorableTextError):
        encode_record(ObjectRecord(text))
    with pytest.raises(UnstorableTextError):
        encode_record(ObjectRecord("1", materials=("wood", text)))
    with pytest.raises(UnstorableTextError):
        encode_source({"a": text})
    assert check_text("Ω 😀") == "Ω 😀"


def test_infinite_numbers_are_refused() -> None:
    """A number that is not finite is no JSON."""
    with pytest.raises(ValueError, match="JSON"):
        dump_json(float("inf"))


@dataclass(frozen=True, slots=True)
class _Odd:
    thing: complex


@dataclass(frozen=True, slots=True)
class _OddUnion:
    thing: int | str


@pytest.mark.parametrize("odd", [_Odd(1j), _OddUnion(1), 3], ids=["type", "union", "no class"])
def test_types_without_a_form_are_refused(odd: object) -> None:
    """A field whose values have no form stops the work, so that none is ever lost."""
    with pytest.raises(TypeError):
        encode_record(odd)


def test_composed_cards_come_back() -> None:
    """Cards as they are composed come back from their text, kind and all."""
    for kind in ContainerKind:
        packing = Packing(ContainerRecord("B-1", kind), 1, ())
        for card in compose_cards(packing, Museum(), kinds=CARD_KINDS):
            assert decode_record(type(card), encode_record(card)) == card


def test_difference_names_what_differs() -> None:
    """Only fields that differ are given, as they were and as they are."""
    one = ObjectRecord("1", "Lead", period="1800")
    other = replace(one, title="Sounding lead", period="")
    assert compare_json(encode_record(one), encode_record(other)) == {
        "before": {"title": "Lead", "period": "1800"},
        "after": {"title": "Sounding lead"},
    }
    assert json.loads(dump_json(compare_json("{}", "{}"))) == {"after": {}, "before": {}}
