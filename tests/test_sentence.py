"""Tests for sentences that remember how they were made."""

from __future__ import annotations

import json
import pickle
from datetime import date
from pathlib import Path

from service.sentence import (
    Sentence,
    has_words,
    join_sentences,
    put_together,
    take_apart,
)


def test_it_is_the_english_text() -> None:
    """Whoever does not translate sees a text; without values its braces stay."""
    sentence = Sentence("{number} is in", number="B-1")
    assert sentence == "B-1 is in"
    assert isinstance(sentence, str)
    assert Sentence("{bar:g} mm") == "{bar:g} mm"
    assert (sentence.template, dict(sentence.values)) == ("{number} is in", {"number": "B-1"})


def test_a_sentence_made_of_one_is_the_same() -> None:
    """Nothing that is known of it is lost on the way."""
    sentence = Sentence("{number} is in", number="B-1")
    assert Sentence(sentence) is sentence


def test_it_goes_to_another_process_whole() -> None:
    """With its template; what cannot travel is kept as it reads."""
    sent = pickle.loads(pickle.dumps(Sentence("on {day}", day=date(2026, 10, 4))))  # noqa: S301 - our own bytes
    assert (sent, sent.template) == ("on 2026-10-04", "on {day}")
    assert dict(sent.values) == {"day": "2026-10-04"}


def test_sentences_stand_one_after_another() -> None:
    """Each stays one of its own; what is empty is left out."""
    joined = join_sentences("One.", "", Sentence("{n} two.", n=2))
    assert joined == "One. 2 two."
    assert list(joined.values.values()) == ["One.", "2 two."]
    assert join_sentences("", "") == ""


def test_values_are_no_words() -> None:
    """A template of placeholders and signs alone needs no translation."""
    assert has_words("{name} is in")
    assert not has_words("{name}: {far:.2f} ({state!r})")


def test_a_sentence_is_taken_apart_and_put_together() -> None:
    """As JSON, values that are sentences too; any other text stays as it is."""
    inner = Sentence("{count} lamps", count=3)
    whole = Sentence("{place}: {inner}, {plain}.", place=Path("a"), inner=inner, plain="x")
    apart = json.loads(json.dumps(take_apart(whole)))
    again = put_together(apart)
    assert (again, again.template) == ("a: 3 lamps, x.", whole.template)
    assert again.values["plain"] == "x"
    within = again.values["inner"]
    assert isinstance(within, Sentence)
    assert (within.template, within.values) == ("{count} lamps", {"count": 3})
    dated = Sentence("on {day:%d %B}", day=date(2026, 12, 1))
    assert put_together(json.loads(json.dumps(take_apart(dated)))) == "on 01 December"
    assert take_apart("plain") == "plain"
    assert put_together("plain {x}") == "plain {x}"
