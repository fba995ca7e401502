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
    View("name and language", "/you", "/you"),
)
