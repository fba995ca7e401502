"""What a browser remembers while somebody walks with new cards: the run, and the card in hand.

The page that answers a scan reads both, so that it can offer to say that a card is on.
"""

from __future__ import annotations

import json
from urllib.parse import quote, unquote

from fastapi import Request, Response

from service.keeping.printing.attach import ScannedCard

WALK_COOKIE = "underlid-walk"
HELD_COOKIE = "underlid-card"
_SECONDS = 12 * 3600
"""A working day; the cards themselves wait in the store as long as they have to."""
_DIGITS = 10


def begin_walk(response: Response, run_id: int) -> None:
    """Remember with which run somebody walks."""
    _keep(response, WALK_COOKIE, str(run_id))


def end_walk(response: Response) -> None:
    """Forget the run and the card in hand."""
    response.delete_cookie(WALK_COOKIE, path="/")
    drop_held(response)


def read_walk(request: Request) -> int | None:
    """Give the run with which this browser walks; anything else in the cookie is none."""
    value = request.cookies.get(WALK_COOKIE, "")
    return int(value) if value.isascii() and value.isdigit() and len(value) < _DIGITS else None


def hold_card(response: Response, card: ScannedCard) -> None:
    """Remember the card that was scanned, until its container is scanned too."""
    text = json.dumps([card.container_number, card.revision, card.letters])
    _keep(response, HELD_COOKIE, quote(text))


def drop_held(response: Response) -> None:
    """Forget the card in hand."""
    response.delete_cookie(HELD_COOKIE, path="/")


def read_held(request: Request) -> ScannedCard | None:
    """Give the card in hand; anything else in the cookie is none."""
    try:
        number, revision, letters = json.loads(unquote(request.cookies.get(HELD_COOKIE, "")))
    except (ValueError, TypeError):
        return None
    texts = isinstance(number, str) and isinstance(letters, str)
    return ScannedCard(number, revision, letters) if texts and type(revision) is int else None


def _keep(response: Response, name: str, value: str) -> None:
    # Lax, for whoever scans comes from the camera of the phone; it says nothing secret.
    response.set_cookie(name, value, max_age=_SECONDS, httponly=True, samesite="lax", path="/")
