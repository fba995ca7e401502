"""Every page in each state that looks different, by name; the tests of this folder go through all.

`VIEWS` is compared with the routes, so that no page is left out.
"""

from __future__ import annotations

from dataclasses import dataclass

from service.records.record import PlaceRecord
from service.web.views.containers.contents import place_key
from service.web.views.help.pages import PAGES


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
    View("import", "/import", "/import"),
    View("nothing to look at", "/import/look", "/import/look"),
    View("nothing to check", "/import/check", "/import/check"),
    View("an import that was done", "/import/done", "/import/done?id=1"),
    View("an import to be taken back", "/import/undo", "/import/undo?id=1"),
    View("earlier imports", "/imports", "/imports"),
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
    View("sign in", "/sign-in", "/sign-in"),
    View("code on a phone", "/pair", "/pair"),
    View("code scanned by a phone", "/pair/{code}", "/pair/7KMT-F4RQ-9XWN"),
    View("sign in a phone", "/people/phone", "/people/phone"),
    View("people", "/people", "/people"),
    View("own tokens", "/people/tokens", "/people/tokens"),
    View("own password", "/people/password", "/people/password"),
    View("share", "/share", "/share"),
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
    View("checks", "/checks", "/checks"),
    View("checks of a year", "/checks", "/checks?within=365&kind=pests"),
    View("a look", "/checks/look", "/checks/look?container=B-031"),
    View("which container", "/checks/look", "/checks/look"),
    View("pests", "/checks/pests", "/checks/pests?container=B-036"),
    View("paper", "/stocks", "/stocks"),
    View("a sheet measured", "/stocks/measure", "/stocks/measure"),
    View("printers", "/printers", "/printers"),
    View("crosses measured", "/printers/measure", "/printers/measure?paper=A4"),
    View("rules", "/rules", "/rules"),
    View("help", "/help", "/help"),
    View("patterns", "/patterns", "/patterns"),
    View("scanned", "/c/{number:path}", "/c/B-027?r=1&k=BBBB"),
    View("nothing there", "", "/nothing-here"),
    *(View(f"help: {name}", "/help/{name}", f"/help/{name}") for name in PAGES),
)

FILES = {
    "/checks/sheet/{paper}",
    "/checks/isolation-label/{paper}",
    "/printers/ruler-sheet/{paper}",
    "/stocks/test-sheet/{name:path}",
}
"""Routes that give a PDF, which no browser test looks at."""
