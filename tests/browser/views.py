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


VIEWS = (
    View("today", "/", "/"),
    View("containers", "/containers", "/containers"),
    View("import", "/import", "/import"),
    View("nothing to look at", "/import/look", "/import/look"),
    View("nothing to check", "/import/check", "/import/check"),
    View("an import that was done", "/import/done", "/import/done?id=1"),
    View("an import to be taken back", "/import/undo", "/import/undo?id=1"),
    View("earlier imports", "/imports", "/imports"),
    View("name and language", "/you", "/you"),
)
