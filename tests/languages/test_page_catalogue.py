"""Tests for the catalogues of pages, and for bringing one up to date."""

from __future__ import annotations

import re
from io import BytesIO

import pytest
from babel.messages.catalog import Message
from babel.messages.pofile import read_po

from service.languages.page_catalogue import (
    TEMPLATE,
    make_catalogue,
    read_catalogue,
    write_catalogue,
)
from service.languages.page_catalogue import Message as Shown
from service.languages.page_words import list_page_languages
from service.web.views.language.messages import find_shown

LANGUAGES = list_page_languages()[1:]
PLURALS = {"cy": 6, "fr": 3}
PLACEHOLDER = re.compile(r"%\(\w+\)s|\{\w+[^{}]*\}|<[^>]+>")
HEAD = 'msgid ""\nmsgstr ""\n"Content-Type: text/plain; charset=utf-8\\n"'


def test_the_template_is_current() -> None:
    """Whoever changes a word of a page runs templates/locale/update_pages.py."""
    head = TEMPLATE.read_text(encoding="utf-8").partition("\n\n")[0]
    written = write_catalogue(make_catalogue(find_shown()), head)
    assert TEMPLATE.read_text(encoding="utf-8") == written


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_catalogue_is_complete(language: str) -> None:
    """It translates exactly what pages show, in every form of a plural, and guesses nothing."""
    catalogue = read_catalogue(language)
    assert {each.id for each in catalogue if each.id} == set(find_shown())
    assert catalogue.num_plurals == PLURALS[language]
    lacking = [each.id for each in catalogue if each.id and not all(_forms(each))]
    assert lacking == []
    assert [each.id for each in catalogue if each.id and each.fuzzy] == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_placeholders_carry_over(language: str) -> None:
    """A translation holds the values and the links of the English; a plural may leave out 1."""
    wrong = [
        (each.id, form)
        for each in read_catalogue(language)
        if each.id
        for form in _forms(each)
        if not _fits(each, form)
    ]
    assert wrong == []


def test_a_catalogue_keeps_what_is_still_shown() -> None:
    """Translations stay, new messages stand empty, and what nothing shows any more goes."""
    content = f'{HEAD}\n\nmsgid "Box"\nmsgstr "Blwch"\n\nmsgid "Gone"\nmsgstr "Wedi mynd"\n'
    known = read_po(BytesIO(content.encode()), locale="cy")
    shown: dict[Shown, tuple[str, ...]] = {
        "Box": ("a.html",),
        ("one box", "%(num)s boxes"): ("b.html",),
    }
    text = write_catalogue(make_catalogue(shown, known), HEAD)
    assert '#: a.html\nmsgid "Box"\nmsgstr "Blwch"' in text
    assert "Gone" not in text
    assert 'msgid_plural "%(num)s boxes"\nmsgstr[0] ""' in text
    assert 'msgstr[5] ""' in text


def _forms(message: Message) -> tuple[str, ...]:
    said = message.string or ""
    return (said,) if isinstance(said, str) else tuple(said)


def _fits(message: Message, form: str) -> bool:
    if isinstance(message.id, str):
        return sorted(PLACEHOLDER.findall(form)) == sorted(PLACEHOLDER.findall(message.id))
    wanted = {*PLACEHOLDER.findall(message.id[1])}
    return wanted - {"%(num)s", "{num}"} <= {*PLACEHOLDER.findall(form)} <= wanted
