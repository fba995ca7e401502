"""All paths of the store, the longer ones first: a number may hold a slash and takes the rest."""

from __future__ import annotations

from fastapi import APIRouter

from service.web.replies.problems import MEDIA_TYPE
from service.web.store.cards import (
    attachments,
    own_stocks,
    printers,
    prints,
    reprints,
    sending,
    swap_list,
)
from service.web.store.intake import imports, mappings, photos, undo
from service.web.store.packings import checks, items, moves, outs, packings, papers
from service.web.store.people import pairings, sessions, sharing, tokens, users
from service.web.store.previews import cards as card_previews
from service.web.store.previews import plans as run_previews
from service.web.store.previews import stocks as stock_previews
from service.web.store.records import containers, history, object_photos, objects, packers, search
from service.web.store.tasks import events, spoiled, tasks
from service.web.views.scan import page as scan

_PROBLEM: dict[str, object] = {
    "description": "A problem, with its code and advice.",
    "content": {MEDIA_TYPE: {"schema": {"$ref": "#/components/schemas/Problem"}}},
}

router = APIRouter(responses={"4XX": _PROBLEM, "5XX": _PROBLEM})
PARTS = (
    *(card_previews, run_previews, stock_previews),
    *(history, object_photos, packings, items, checks, outs, papers, moves, objects),
    *(packers, containers),
    *(mappings, imports, undo, photos, events, spoiled, tasks, search),
    *(printers, own_stocks, prints, sending),
    *(attachments, reprints, swap_list, scan),
    *(sessions, users, tokens, pairings, sharing),
)
for each in PARTS:
    router.include_router(each.router)
