from __future__ import annotations

from datetime import UTC, date, datetime

from service.languages.catalogue import load_phrasebook
from service.languages.page_words import (
    choose_language,
    list_page_languages,
    load_page_words,
    say_of_handling,
)
from service.records.museum.language import Language


def test_english_is_always_there() -> None:
    """It comes first, and is what anybody gets whose language is not on offer."""
    assert list_page_languages()[0] == "en"
    assert choose_language([]) == "en"
    assert choose_language(["tlh", "en-US"]) == "en"


def test_days_cannot_be_misread() -> None:
    """The month is a word, so day and month cannot be exchanged."""
    words = load_page_words("en")
    assert words.write_day(date(2026, 10, 4)) == "4 Oct 2026"
    assert "Oct 2026" in words.write_moment(datetime(2026, 10, 4, 12, tzinfo=UTC))
    assert words.messages.gettext("Today") == "Today"


def test_words_of_handling_come_from_its_catalogue() -> None:
    """A phrase, a state, a limit, whom to ask; within a sentence a phrase begins small."""
    welsh = load_phrasebook(Language.WELSH)
    assert welsh is not None
    assert say_of_handling(welsh, "Radium") == welsh.say("Radium")
    assert (
        say_of_handling(welsh, "radium") == welsh.say("Radium")[0].lower() + welsh.say("Radium")[1:]
    )
    assert say_of_handling(welsh, "Radium confirmed") == welsh.say_hazard("Radium confirmed") != ""
    assert say_of_handling(welsh, "At most 3 boxes on top").count("3") == 1
    assert say_of_handling(welsh, "No phrase of ours") == ""
