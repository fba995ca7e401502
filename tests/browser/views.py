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


# The front of the marlinspike in the demo.
FRONT = "eabbfd3a7ee3f83afcd64b2e77a9629a7bc77faa31635ea0e7d6334208a5c451"

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
    View("what to pack", "/pack", "/pack"),
    View("packing table", "/pack/table", "/pack/table?container=B-027"),
    View("packed", "/pack/packed/{number:path}", "/pack/packed/B-027"),
    View("objects", "/objects", "/objects"),
    View("an object", "/objects/{number:path}", "/objects/X.112"),
    View("new object", "/new/object", "/new/object"),
    View("edit an object", "/edit/object/{number:path}", "/edit/object/X.112"),
    View("a photo", "/photo", f"/photo?object=1931.14.7&photo={FRONT}"),
    View("no connection", "/pack/offline", "/pack/offline"),
    View("print desk", "/print", "/print"),
    View("cards to swap", "/print", "/print?what=reprints"),
    View("what is missing", "/print", "/print?what=lacking"),
    View("certain boxes", "/print", "/print?containers=B-027&q=bench"),
    View("unknown boxes", "/print", "/print?what=containers&typed=B-999"),
    View("tags for objects", "/print", "/print?objects=X.112"),
    View("a lost card", "/print", "/print?what=card&containers=B-027"),
    View("every container", "/print", "/print?what=all"),
    View("swap list", "/print/swap-list", "/print/swap-list"),
    View("tasks", "/tasks", "/tasks"),
    View("a task", "/tasks/{task}", "/tasks/print-0"),
    View("print runs", "/runs", "/runs"),
    View("a print run", "/run/{run}", "/run/1"),
    View("runs to walk with", "/attach", "/attach"),
    View("the walk", "/attach", "/attach?run=1"),
    View("card in hand", "/attach/held", "/attach/held"),
)
