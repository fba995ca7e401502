from __future__ import annotations

import pytest

from service.records.rows.text import has_unseen, means_nothing, quote_text, tidy_text


@pytest.mark.parametrize(
    ("text", "tidy"),
    [
        ("  Jar \u00a0", "Jar"),
        ("Jar\r\nwith lid", "Jar with lid"),
        ("Jar\twith lid", "Jar with lid"),
        ("Jar\x00\x85", "Jar"),
        ("Jar \u202egnp.exe\u2069", "Jar gnp.exe"),
        ("\ufeffJar", "Jar"),
        ("Cafe\u0301", "Café"),
        ("two  blanks", "two  blanks"),
        ("=SUM(A1)", "=SUM(A1)"),
        ("क्\u200dष", "क्\u200dष"),
        ("\u200b \u2060\u200b", ""),
    ],
)
def test_text_loses_only_what_cannot_be_seen(text: str, tidy: str) -> None:
    """Blanks at the ends, controls and turning marks go; what is written stays."""
    assert tidy_text(text) == tidy


def test_line_break_may_part_items() -> None:
    """A cell of several lines can be read as a list."""
    assert tidy_text("brass\noak", line_break="; ") == "brass; oak"


def test_only_unseen_characters_are_worth_a_finding() -> None:
    """Line breaks and tabs are usual in cells."""
    assert not has_unseen("Jar\r\n\twith lid")
    assert has_unseen("Jar\x07")


@pytest.mark.parametrize("text", ["", "unknown", "None", "NULL", "n/a", "?", "???", "-", "\u2013"])
def test_words_for_nothing(text: str) -> None:
    """What people write where they know nothing counts as nothing."""
    assert means_nothing(text)


@pytest.mark.parametrize("text", ["0", "nonesuch", "19th century?", "-1"])
def test_words_for_something(text: str) -> None:
    """A doubt beside a value does not take the value away."""
    assert not means_nothing(text)


def test_long_quotations_are_cut() -> None:
    """A message stays readable whatever the cell holds."""
    assert len(quote_text("x" * 5000)) < 70
    assert quote_text("jar") == "\N{LEFT DOUBLE QUOTATION MARK}jar\N{RIGHT DOUBLE QUOTATION MARK}"
