"""Brings the notes of what today's cards and tags say up to date, a portion at a time."""

from __future__ import annotations

import hashlib
from collections import defaultdict
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Generic, TypeVar

from service.cards.fingerprint import fingerprint_card
from service.keeping.tags.today import compose_today_tags
from service.keeping.today import compose_today
from service.languages.catalogue import catalogue_path
from service.pages.ruler import Ruler
from service.pipeline.ready import Progress, tell_nobody
from service.records.museum.language import LANGUAGE_NAMES
from service.store.handles import Connection, Engine
from service.store.open import reading, writing
from service.store.today.note import (
    Fingerprints,
    Noted,
    heed_wording,
    load_wording,
    save_today,
)
from service.store.today.stale import CARDS, TAGS, Note, count_stale, load_stale
from service.store.today.tag_note import save_today_tags

Said = TypeVar("Said")

SERVICE = Path(__file__).parents[1]
WORDING = (
    "cards",
    "contents",
    "handling",
    "keeping/tags/today.py",
    "keeping/today.py",
    "languages/catalogue.py",
    "pipeline/printable.py",
    "printed.py",
    "records",
    "sentence.py",
    "symbols",
    "units.py",
)
"""What decides the words of a card; its look makes no card wrong."""


@dataclass(frozen=True, slots=True)
class _Wording(Generic[Said]):
    """How one kind of note is made: what of it at once, so that nobody waits for the store."""

    note: Note
    step: str
    at_once: int
    word: Callable[[Connection, Ruler, tuple[str, ...]], Mapping[str, Said]]
    save: Callable[[Connection, Mapping[str, Said], int], None]


def refresh_today(engine: Engine, ruler: Ruler, *, on_progress: Progress = tell_nobody) -> None:
    """Word all cards and tags that a change may concern, until none is left.

    Somebody may change the store meanwhile: what changed after a portion was read stays marked.
    """
    _heed_wording(engine)
    _refresh(engine, ruler, OF_CONTAINERS, on_progress)
    _refresh(engine, ruler, OF_OBJECTS, on_progress)


def _refresh(engine: Engine, ruler: Ruler, wording: _Wording[Said], on_progress: Progress) -> None:
    done = 0
    with reading(engine) as connection:
        total = count_stale(connection, wording.note)
    while True:
        with reading(engine) as connection:
            stale = load_stale(connection, wording.note, limit=wording.at_once)
            if not stale.numbers:
                return
            fingerprints = wording.word(connection, ruler, stale.numbers)
        with writing(engine) as connection:
            wording.save(connection, fingerprints, stale.as_of)
        done += len(stale.numbers)
        on_progress(wording.step, done, max(done, total))


@cache
def wording_sha256() -> str:
    """Give the SHA-256 of all sources and catalogues that decide what a card says."""
    digest = hashlib.sha256()
    for name in WORDING:
        path = SERVICE / name
        sources = [path] if path.is_file() else sorted(path.rglob("*.py"))
        for source in sources:
            digest.update(source.relative_to(SERVICE).as_posix().encode() + b"\0")
            digest.update(source.read_bytes() + b"\0")
    for language in LANGUAGE_NAMES:
        digest.update(catalogue_path(language).read_bytes() + b"\0")
    return digest.hexdigest()


def _heed_wording(engine: Engine) -> None:
    with reading(engine) as connection:
        if load_wording(connection) == wording_sha256():
            return
    with writing(engine) as connection:
        heed_wording(connection, wording_sha256())


def _word_cards(
    connection: Connection, ruler: Ruler, numbers: tuple[str, ...]
) -> dict[str, Fingerprints]:
    """Give the fingerprints of each container; one whose cards cannot be worded has none."""
    today = compose_today(connection, ruler, numbers)
    found: dict[str, dict[tuple[str, int], Noted]] = defaultdict(dict)
    for key, card in today.cards.items():
        number, kind, side = key
        noted = Noted(fingerprint_card(card), standing=key in today.standing)
        found[number][kind, side] = noted
    return {number: found[number] for number in numbers}


def _word_tags(connection: Connection, ruler: Ruler, numbers: tuple[str, ...]) -> dict[str, str]:
    """Give the fingerprint of each object's tag; it is empty where it cannot be worded."""
    tags = compose_today_tags(connection, ruler, numbers).cards
    found = {number: fingerprint_card(tag) for (number, _, _), tag in tags.items()}
    return {number: found.get(number, "") for number in numbers}


OF_CONTAINERS = _Wording(
    CARDS,
    "cards",
    500,
    _word_cards,
    lambda connection, said, as_of: save_today(connection, said, as_of=as_of),
)
OF_OBJECTS = _Wording(
    TAGS,
    "tags",
    2_000,
    _word_tags,
    lambda connection, said, as_of: save_today_tags(connection, said, as_of=as_of),
)
