"""Every page in each state that looks different, by name; the tests of this folder go through all.

`VIEWS` is compared with the routes, so that no page is left out.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class View:
    """A page in a state: the path of its route, and the address that shows it in the demo."""

    name: str
    route: str
    address: str


NO_PAGES = {"/pack/sw.js"}
"""What browsers load beside pages, and nobody looks at."""

VIEWS = (
    View("today", "/", "/"),
    View("containers", "/containers", "/containers"),
    View("name and language", "/you", "/you"),
    View("what to pack", "/pack", "/pack"),
    View("packing table", "/pack/table", "/pack/table?container=B-027"),
    View("packed", "/pack/packed/{number:path}", "/pack/packed/B-027"),
    View("no connection", "/pack/offline", "/pack/offline"),
)
