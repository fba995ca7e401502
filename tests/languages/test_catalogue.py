"""Tests for the message catalogues that ship, and for reading one."""

from __future__ import annotations

import re

import pytest
from babel.messages.pofile import PoFileError

from service.cards.second.phrases import list_phrases
from service.languages.catalogue import (
    FILE_NAME,
    LOCALE,
    catalogue_path,
    load_phrasebook,
    read_phrasebook,
)
from service.records.museum.language import LANGUAGE_NAMES, Language
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from tests.cards.second.made import phrasebook

PLACEHOLDER = re.compile(r"\{\w+\}")
LONGEST_RATIO = 1.8
GRACE_CHARACTERS = 10
"""What a short word may be longer by: "Lead" in twice its letters still fits where it stands."""

HEAD = b'msgid ""\nmsgstr ""\n"Content-Type: text/plain; charset=utf-8\\n"\n"X-Reviewed: %s\\n"\n\n'


@pytest.mark.parametrize("language", LANGUAGE_NAMES)
def test_a_catalogue_is_complete(language: Language) -> None:
    """It translates exactly what cards print: nothing lacks, nothing is left over."""
    messages = phrasebook(language).messages
    assert [phrase for phrase in list_phrases() if phrase not in messages] == []
    assert [phrase for phrase in messages if phrase not in list_phrases()] == []
    assert all(said.strip() == said != "" for said in messages.values())


@pytest.mark.parametrize("language", LANGUAGE_NAMES)
def test_placeholders_carry_over(language: Language) -> None:
    """A translation holds the same placeholders, and ends in a full stop if the English does."""
    for english, said in phrasebook(language).messages.items():
        assert sorted(PLACEHOLDER.findall(said)) == sorted(PLACEHOLDER.findall(english)), said
        assert said.endswith(".") is english.endswith("."), said


@pytest.mark.parametrize("language", LANGUAGE_NAMES)
def test_translations_are_about_as_short(language: Language) -> None:
    """None is so long that it could not stand beside the English."""
    for english, said in phrasebook(language).messages.items():
        most = max(LONGEST_RATIO * len(english), len(english) + GRACE_CHARACTERS)
        assert len(said) <= most, said


@pytest.mark.parametrize("language", LANGUAGE_NAMES)
def test_every_letter_can_be_printed(language: Language) -> None:
    """The shipped fonts have every sign of every translation."""
    ruler = PangoRuler(FONTS_CONF)
    said = " ".join(phrasebook(language).messages.values())
    assert ruler.missing_characters(said) == ()


@pytest.mark.parametrize("language", LANGUAGE_NAMES)
def test_different_words_stay_different(language: Language) -> None:
    """No two hazards or states are called the same, so that nobody takes one for the other."""
    messages = phrasebook(language).messages
    states = [said for english, said in messages.items() if english.startswith("{hazard}")]
    assert len(set(states)) == 3
    short = [said for english, said in messages.items() if not english.endswith(".")]
    assert len(set(short)) == len(short)


def test_every_catalogue_can_be_chosen() -> None:
    """A folder for each language of the list, and no other."""
    found = {path.parent.name for path in LOCALE.glob(f"*/{FILE_NAME}")}
    assert found == {language.value for language in LANGUAGE_NAMES}
    assert {*LANGUAGE_NAMES} == {*Language} - {Language.NONE}
    assert load_phrasebook(Language.NONE) is None


@pytest.mark.parametrize("language", LANGUAGE_NAMES)
def test_the_head_of_an_unreviewed_catalogue_says_so(language: Language) -> None:
    """Whoever opens the file reads what the program reads."""
    text = catalogue_path(language).read_text(encoding="utf-8")
    is_reviewed = phrasebook(language).is_reviewed
    assert ("Translation not reviewed by a specialist" in text) is not is_reviewed
    assert f'"Language: {language.value}\\n"' in text


@pytest.mark.parametrize(
    ("field", "is_reviewed"), [(b"yes", True), (b"no", False), (b"not yet", False), (b"", False)]
)
def test_only_a_plain_yes_counts_as_reviewed(field: bytes, is_reviewed: bool) -> None:  # noqa: FBT001 - a case
    """Anything else in the head leaves the translation unreviewed."""
    assert read_phrasebook(Language.WELSH, HEAD % field).is_reviewed is is_reviewed


def test_what_is_not_translated_for_certain_is_left_out() -> None:
    """An empty message and one marked fuzzy leave the English alone."""
    content = HEAD % b"no" + (
        b'msgid "Lead"\nmsgstr "Plwm"\n\nmsgid "Radium"\nmsgstr ""\n\n'
        b'#, fuzzy\nmsgid "Sharp"\nmsgstr "Pigog"\n'
    )
    assert read_phrasebook(Language.WELSH, content).messages == {"Lead": "Plwm"}


def test_a_damaged_catalogue_is_refused() -> None:
    """What is no catalogue is not read as an empty one."""
    with pytest.raises(PoFileError):
        read_phrasebook(Language.WELSH, b"Lead: Plwm\n")


@pytest.mark.parametrize("language", LANGUAGE_NAMES)
def test_readme_says_how_far_a_translation_is(language: Language) -> None:
    """Its table has each language with its code and whether a specialist has read it."""
    book = phrasebook(language)
    state = "reviewed by a specialist" if book.is_reviewed else "not reviewed by a specialist"
    readme = (LOCALE.parents[1] / "README.md").read_text(encoding="utf-8")
    assert f"| {book.name} | `{language.value}` | {state} |" in readme
