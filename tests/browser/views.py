"""Every page in each state that looks different, by name; the tests of this folder go through all.

`VIEWS` is compared with the routes, so that no page is left out.
"""

from __future__ import annotations

from dataclasses import dataclass

from service.records.record import PlaceRecord
from service.web.views.containers.contents import place_key


@dataclass(frozen=True, slots=True)
class View:
    """A page in a state: the path of its route, and the address that shows it in the demo."""

    name: str
    route: str
    address: str


VIEWS = (
    View("today", "/", "/"),
    View("containers", "/containers", "/containers"),
    View("containers to swap", "/containers", "/containers?state=swap"),
    View("containers as one walks", "/containers", "/containers?order=walk"),
    View("container", "/containers/{number:path}", "/containers/B-031"),
    View(
        "object to be changed",
        "/containers/{number:path}",
        f"/containers/B-027?open={place_key(PlaceRecord('X.112'))}",
    ),
    View("contents put in order", "/containers/{number:path}", "/containers/B-031?arrange=yes"),
    View("history", "/history/container/{number:path}", "/history/container/B-027"),
    View(
        "packing of old", "/history/container/{number:path}", "/history/container/B-027?revision=1"
    ),
    View("new container", "/new/container", "/new/container"),
    View("container to be changed", "/edit/container/{number:path}", "/edit/container/B-027"),
    View("found", "/find", "/find?q=lead"),
    View("found at once", "/find", "/find?q=X.112"),
    View("not found", "/find", "/find?q=zzz"),
    View("suggestions", "/suggest", "/suggest?q=19"),
    View("name and language", "/you", "/you"),
)
