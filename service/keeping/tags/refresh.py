"""Brings the note of what today's object tags say up to date, a portion of objects at a time."""

from __future__ import annotations

from service.cards.fingerprint import fingerprint_card
from service.keeping.tags.today import TodayTags, compose_today_tags
from service.pages.ruler import Ruler
from service.pipeline.ready import Progress, tell_nobody
from service.store.handles import Engine
from service.store.open import reading, writing
from service.store.today.tag_note import count_stale_tags, load_stale_tags, save_today_tags

PORTION = 2_000
"""Tags worded at once: short enough that nobody waits for the store."""


def refresh_today_tags(
    engine: Engine, ruler: Ruler, *, on_progress: Progress = tell_nobody
) -> None:
    """Word the tags of every object that changed and has one on it, until none is left.

    Somebody may change the store meanwhile: what changed after a portion was read stays marked.
    """
    done = 0
    with reading(engine) as connection:
        total = count_stale_tags(connection)
    while True:
        with reading(engine) as connection:
            stale = load_stale_tags(connection, limit=PORTION)
            if not stale.object_numbers:
                return
            today = compose_today_tags(connection, ruler, stale.object_numbers)
        with writing(engine) as connection:
            fingerprints = _by_object(today, stale.object_numbers)
            save_today_tags(connection, fingerprints, as_of=stale.as_of)
        done += len(stale.object_numbers)
        on_progress("tags", done, max(done, total))


def _by_object(today: TodayTags, numbers: tuple[str, ...]) -> dict[str, str]:
    """Give the fingerprint of each object's tag; it is empty where it cannot be worded."""
    found = {number: fingerprint_card(tag) for (number, _, _), tag in today.cards.items()}
    return {number: found.get(number, "") for number in numbers}
