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

# The front of the marlinspike in the demo.
_FRONT = "eabbfd3a7ee3f83afcd64b2e77a9629a7bc77faa31635ea0e7d6334208a5c451"

VIEWS = (
    View("today", "/", "/"),
    View("containers", "/containers", "/containers"),
    View("name and language", "/you", "/you"),
    View("what to pack", "/pack", "/pack"),
    View("packing table", "/pack/table", "/pack/table?container=B-027"),
    View("packed", "/pack/packed/{number:path}", "/pack/packed/B-027"),
    View("objects", "/objects", "/objects"),
    View("an object", "/objects/{number:path}", "/objects/X.112"),
    View("new object", "/new/object", "/new/object"),
    View("edit an object", "/edit/object/{number:path}", "/edit/object/X.112"),
    View("a photo", "/photo", f"/photo?object=1931.14.7&photo={_FRONT}"),
    View("no connection", "/pack/offline", "/pack/offline"),
)
