"""What was just put on, in words, and the form that takes it back."""

from __future__ import annotations

from collections.abc import Sequence

from fastapi import Response

from service.cards.kinds import find_kind
from service.keeping.printing.attach import Attached
from service.languages.saying import said, say, say_many
from service.web.views.attach.spans import write_spans
from service.web.views.desk.offer import name_old
from service.web.views.shell.notice import Notice, Undo, go_to

_NAMED = 3


def tell_done(page: str, done: Sequence[Attached]) -> Response:
    """Go on to a page that tells what is on now and what comes off for it."""
    if not done:
        return go_to(page, Notice(say("None of them waited.")))
    return go_to(page, Notice(f"{_say_on(done)} {_say_off(done)}".strip(), _undo(done)))


def _say_on(done: Sequence[Attached]) -> str:
    if len(done) > 1:
        return say_many("{num} card is on.", "{num} cards are on.", len(done))
    made = done[0].card.made
    card = said(find_kind(made.kind).name)
    return say(
        "{card} {version} is on {number}.", card=card, version=name_old(made), number=made.number
    )


def _say_off(done: Sequence[Attached]) -> str:
    """Say which old cards come off, for nobody sees from a new card which one it replaces."""
    off = [one.replaced for one in done if one.replaced is not None]
    if not off:
        return ""
    named = ", ".join(
        say("{version} of {number}", version=name_old(card.made), number=card.made.number)
        for card in off[:_NAMED]
    )
    if len(off) > _NAMED:
        return say_many(
            "Take off {named} and one more.",
            "Take off {named} and {num} more.",
            len(off) - _NAMED,
            named=named,
        )
    return say("Take off {named}.", named=named)


def _undo(done: Sequence[Attached]) -> Undo:
    fields = {
        "cards": write_spans(one.card.card_id for one in done),
        "replaced": write_spans(one.replaced.card_id for one in done if one.replaced is not None),
    }
    return Undo("/attach/undo", fields)
