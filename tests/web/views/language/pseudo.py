"""A language in which every message is the English one in brackets, to find words outside them."""

from __future__ import annotations

import json
import re
import sqlite3
from collections.abc import Iterable, Iterator, Mapping
from contextlib import closing, contextmanager
from html.parser import HTMLParser
from pathlib import Path

import pytest
from babel.messages.catalog import Catalog

from service.cards.fingerprint import LETTERS
from service.cards.second.phrases import list_phrases
from service.languages import page_words
from service.languages.page_catalogue import make_catalogue, write_catalogue
from service.sheets.stocks import PAGES, STOCKS
from service.web.views.language.messages import find_shown
from service.web.views.shell import page as page_module

CODE = "eo"
"""Stands for any other language; it has a plural of two forms, as English has."""
_OPEN, _CLOSE = "⟦", "⟧"
_HEAD = (
    'msgid ""\nmsgstr ""\n"Content-Type: text/plain; charset=utf-8\\n"\n'
    '"Plural-Forms: nplurals=2; plural=(n != 1);\\n"\n"X-Reviewed: no\\n"'
)
_OF_OURS = ("printed_cards", "history")
"""Tables that keep words of ours: what cards say, and what was done."""
_NAMES = frozenset((*(stock.name for stock in STOCKS), *PAGES))
"""By which stocks and paper are chosen everywhere."""
_SPOKEN = ("alt", "aria-label", "placeholder", "title")
"""Attributes that are read to somebody."""
_UNSPOKEN = ("script", "style", "kbd", "code", "svg")
_EMPTY = ("area", "base", "br", "col", "hr", "img", "input", "link", "meta", "source", "wbr")
_WORD = re.compile(r"[^\W\d_]{2,}")
_NO_WORDS = (
    r"\bUnderlid\b",  # our name
    r"\b(?:kB|kg|MB|mm)\b",  # units
    r"\b\d{1,2} \w{3} \d{4}\b",  # days, as Babel writes them
    rf"\b(?:r\d+ )?[{LETTERS}]{{4}}\b",  # revision and check letters of cards
    r"\bOffice copier\b",  # the printer that the store of the tests knows
    r"\bEsperanto|\beo\b",  # this language
)


@contextmanager
def bracketed(folder: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Offer the language as long as it lasts."""
    path = folder / CODE / page_words.FILE_NAME
    path.parent.mkdir()
    path.write_text(write_catalogue(_bracket(), _HEAD), encoding="utf-8")
    with monkeypatch.context() as patch:
        patch.setattr(page_words, "LOCALE", folder)
        _forget()
        yield
    _forget()


def find_unsaid(page: str, data: Iterable[str]) -> list[str]:
    """Find what stands outside of the brackets and is no datum: each piece with letters in it."""
    reader = _Reader()
    reader.feed(page)
    known = sorted({*data, *_NAMES} - {""}, key=len, reverse=True)
    words = (*(rf"(?<!\w){re.escape(each)}(?!\w)" for each in known), *_NO_WORDS)
    datum = re.compile("|".join(words))
    left = (datum.sub(" ", piece) for piece in reader.pieces)
    return [piece.strip() for piece in left if _WORD.search(piece)]


def list_data(store: Path) -> set[str]:
    """List every text that a store holds, those within documents too."""
    with closing(sqlite3.connect(store)) as connection:
        tables = connection.execute("select name from sqlite_master where type = 'table'")
        names = [name for (name,) in tables if name not in _OF_OURS]
        rows = [row for name in names for row in connection.execute(f'select * from "{name}"')]  # noqa: S608 - names of our own tables
    return {text for row in rows for cell in row for text in _texts_in(_decode(cell))}


def _decode(cell: object) -> object:
    try:
        return json.loads(cell) if isinstance(cell, str) and cell[:1] in "[{" else cell
    except ValueError:
        return cell


def _texts_in(value: object) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, Mapping):
        yield from (text for each in value.values() for text in _texts_in(each))
    elif isinstance(value, list):
        yield from (text for each in value for text in _texts_in(each))


class _Reader(HTMLParser):
    """Gathers the text outside of brackets; a message may go on through several elements."""

    def __init__(self) -> None:
        super().__init__()
        self.pieces: list[str] = []
        self._depth = 0
        self._silent: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        said = dict(attrs)
        if tag not in _EMPTY and (
            self._silent or tag in _UNSPOKEN or (said.get("lang") or CODE) != CODE
        ):
            self._silent.append(tag)
        if not self._silent:
            for name in _SPOKEN:
                depth, self._depth = self._depth, 0
                self.handle_data(said.get(name) or "")
                self._depth = depth

    def handle_endtag(self, tag: str) -> None:
        if self._silent and self._silent[-1] == tag:
            self._silent.pop()

    def handle_data(self, data: str) -> None:
        if self._silent:
            return
        outside = ""
        for letter in data:
            self._depth += letter == _OPEN
            outside += "" if self._depth else letter
            self._depth -= letter == _CLOSE
        self.pieces.append(" ".join(outside.split()))


def _bracket() -> Catalog:
    catalogue = make_catalogue(find_shown())
    for phrase in list_phrases():
        catalogue.add(phrase)
    for message in catalogue:
        forms = (message.id,) if isinstance(message.id, str) else message.id
        said = tuple(f"{_OPEN}{form}{_CLOSE}" for form in forms)
        message.string = said[0] if isinstance(message.id, str) else said
    return catalogue


def _forget() -> None:
    page_words.list_page_languages.cache_clear()
    page_words.load_page_words.cache_clear()
    page_module._environment.cache_clear()  # noqa: SLF001
