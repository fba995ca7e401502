"""Brings the note of what today's cards say up to date, a portion of containers at a time."""

from __future__ import annotations

import hashlib
from collections import defaultdict
from functools import cache
from pathlib import Path

from service.cards.fingerprint import fingerprint_card
from service.keeping.tags.refresh import refresh_today_tags
from service.keeping.today import Today, compose_today
from service.languages.catalogue import catalogue_path
from service.pages.ruler import Ruler
from service.pipeline.ready import Progress, tell_nobody
from service.records.museum.language import LANGUAGE_NAMES
from service.store.handles import Engine
from service.store.open import reading, writing
from service.store.today.note import (
    Fingerprints,
    Noted,
    count_stale,
    heed_wording,
    load_stale,
    load_wording,
    save_today,
)

PORTION = 500
"""Containers worded at once: short enough that nobody waits for the store."""

SERVICE = Path(__file__).parents[1]
_WORDING = ("cards", "contents", "handling", "records", "symbols", "units.py")
"""What decides the words of a card; its look makes no card wrong."""


def refresh_today(engine: Engine, ruler: Ruler, *, on_progress: Progress = tell_nobody) -> None:
    """Word all cards and tags that a change may concern, until none is left.

    Somebody may change the store meanwhile: what changed after a portion was read stays marked.
    """
    _heed_wording(engine)
    _refresh_cards(engine, ruler, on_progress)
    refresh_today_tags(engine, ruler, on_progress=on_progress)


def _refresh_cards(engine: Engine, ruler: Ruler, on_progress: Progress) -> None:
    done = 0
    with reading(engine) as connection:
        total = count_stale(connection)
    while True:
        with reading(engine) as connection:
            stale = load_stale(connection, limit=PORTION)
            if not stale.container_numbers:
                return
            today = compose_today(connection, ruler, stale.container_numbers)
        fingerprints = _by_container(today, stale.container_numbers)
        with writing(engine) as connection:
            save_today(connection, fingerprints, as_of=stale.as_of)
        done += len(stale.container_numbers)
        on_progress("cards", done, max(done, total))


@cache
def wording_sha256() -> str:
    """Give the SHA-256 of all sources and catalogues that decide what a card says."""
    digest = hashlib.sha256()
    for name in _WORDING:
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


def _by_container(today: Today, numbers: tuple[str, ...]) -> dict[str, Fingerprints]:
    """Give the fingerprints of each container; one whose cards cannot be worded has none."""
    found: dict[str, dict[tuple[str, int], Noted]] = defaultdict(dict)
    for key, card in today.cards.items():
        number, kind, side = key
        noted = Noted(fingerprint_card(card), standing=key in today.standing)
        found[number][kind, side] = noted
    return {number: found[number] for number in numbers}
