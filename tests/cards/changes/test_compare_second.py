"""Tests for telling what changed in the words of a second language."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.changes.compare_second import compare_second
from service.cards.parts import SecondWords

WELSH = SecondWords("cy", (("Lead confirmed", "Plwm (cadarnhawyd)"),))


@pytest.mark.parametrize(
    ("before", "after", "told"),
    [
        (None, WELSH, ["second language added: 'cy'"]),
        (WELSH, None, ["second language no longer listed: 'cy'"]),
        (WELSH, replace(WELSH, language="pl"), ["second language changed from 'cy' to 'pl'"]),
        (
            WELSH,
            replace(WELSH, words=(("Lead confirmed", "Plwm"),)),
            ["translation beside the English changed"],
        ),
        (WELSH, replace(WELSH, note="not reviewed"), ["translation beside the English changed"]),
        (WELSH, WELSH, []),
    ],
)
def test_another_language_or_translation_is_told(
    before: SecondWords | None, after: SecondWords | None, told: list[str]
) -> None:
    """A reader hears which language came or went, or that its words are others."""
    assert [change.words for change in compare_second(before, after)] == told


def test_words_beside_new_english_need_no_reason() -> None:
    """A hazard that was added has its own reason."""
    more = replace(WELSH, words=(*WELSH.words, ("Sharp confirmed", "Miniog (cadarnhawyd)")))
    assert list(compare_second(WELSH, more)) == []
