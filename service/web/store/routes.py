"""All paths of the store, the longer ones first: a number may hold a slash and takes the rest."""

from __future__ import annotations

from fastapi import APIRouter

from service.web.replies.problems import MEDIA_TYPE
from service.web.store.cards import attachments, printers, prints, reprints, swap_list
from service.web.store.intake import imports, photos
from service.web.store.packings import checks, items, moves, outs, packings, papers
from service.web.store.records import containers, history, objects, search
from service.web.store.tasks import tasks
from service.web.views import scan

_PROBLEM: dict[str, object] = {
    "description": "A problem, with its code and advice.",
    "content": {MEDIA_TYPE: {"schema": {"$ref": "#/components/schemas/Problem"}}},
}

router = APIRouter(responses={"4XX": _PROBLEM, "5XX": _PROBLEM})
PARTS = (
    *(history, packings, items, checks, outs, papers, moves, objects, containers),
    *(imports, photos, tasks, search, printers, prints),
    *(attachments, reprints, swap_list, scan),
)
for each in PARTS:
    router.include_router(each.router)
