"""The service worker that keeps the packing table at hand where there is no connection."""

from __future__ import annotations

import json
from functools import cache

from fastapi import APIRouter, Request, Response

from service.render.task import TEMPLATES
from service.store.people.role import Role
from service.web.access.gate import OPEN, GatedRoute, needs
from service.web.views.shell.assets import find_asset
from service.web.views.shell.page import show_page

router = APIRouter(route_class=GatedRoute)
files = APIRouter(route_class=GatedRoute)

SCOPE = "/pack"
OFFLINE = "/pack/offline"
NEEDED = (
    "underlid.css",
    "pages.js",
    "htmx.min.js",
    "lid.svg",
    "pack-queue.js",
    "pack-send.js",
    "pack-rows.js",
    "pack-table.js",
    "forget.js",
    "sign-out.js",
    "AtkinsonHyperlegibleNext-Regular.woff2",
    "AtkinsonHyperlegibleNext-Bold.woff2",
)
"""What the table loads; a page that is shown without connection asks for nothing else."""
_POLICY = "default-src 'none'; script-src 'self'; connect-src 'self'"
"""A worker obeys the policy of its own script (W3C, Service Workers, 6.4; CSP Level 3, 4.2)."""


@files.get("/pack/sw.js", include_in_schema=False, dependencies=[OPEN])
def worker() -> Response:
    """Give the worker; any change of what it keeps makes it another."""
    headers = {
        "Content-Security-Policy": _POLICY,
        # It stands below /pack/ and serves /pack, too.
        "Service-Worker-Allowed": SCOPE,
        "Cache-Control": "no-cache",
    }
    return Response(_script(), media_type="text/javascript; charset=utf-8", headers=headers)


@router.get(OFFLINE, include_in_schema=False, dependencies=[needs(Role.PACK)])
def offline(request: Request) -> Response:
    """Say that a page was not loaded here before the connection went."""
    return show_page(request, "pack/offline.html", {})


@cache
def _script() -> str:
    kept = json.dumps([*map(find_asset, NEEDED), OFFLINE])
    text = (TEMPLATES / "web" / "pack" / "worker.js").read_text(encoding="utf-8")
    return f"const KEPT = {kept};\n{text}"
