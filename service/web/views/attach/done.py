"""What was just put on, in words, and the form that takes it back."""

from __future__ import annotations

from collections.abc import Sequence

from fastapi import Response

from service.cards.kinds import find_kind
from service.cards.words import count
from service.keeping.printing.attach import Attached
from service.web.views.attach.spans import write_spans
from service.web.views.desk.offer import name_old
from service.web.views.shell.notice import Notice, Undo, go_to

_NAMED = 3


def tell_done(page: str, done: Sequence[Attached]) -> Response:
    """Go on to a page that tells what is on now and what comes off for it."""
    if not done:
        return go_to(page, Notice("None of them waited."))
    return go_to(page, Notice(f"{_say_on(done)} {_say_off(done)}".strip(), _undo(done)))


def _say_on(done: Sequence[Attached]) -> str:
    if len(done) > 1:
        return f"{count(len(done), 'card')} are on."
    made = done[0].card.made
    return f"{find_kind(made.kind).name} {name_old(made)} is on {made.number}."


def _say_off(done: Sequence[Attached]) -> str:
    """Say which old cards come off, for nobody sees from a new card which one it replaces."""
    off = [one.replaced for one in done if one.replaced is not None]
    if not off:
        return ""
    named = ", ".join(f"{name_old(card.made)} of {card.made.number}" for card in off[:_NAMED])
    more = f" and {len(off) - _NAMED} more" if len(off) > _NAMED else ""
    return f"Take off {named}{more}."


def _undo(done: Sequence[Attached]) -> Undo:
    fields = {
        "cards": write_spans(one.card.card_id for one in done),
        "replaced": write_spans(one.replaced.card_id for one in done if one.replaced is not None),
    }
    return Undo("/attach/undo", fields)
