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
    View("sign in", "/sign-in", "/sign-in"),
    View("code on a phone", "/pair", "/pair"),
    View("code scanned by a phone", "/pair/{code}", "/pair/7KMT-F4RQ-9XWN"),
    View("sign in a phone", "/people/phone", "/people/phone"),
    View("people", "/people", "/people"),
    View("own tokens", "/people/tokens", "/people/tokens"),
    View("own password", "/people/password", "/people/password"),
    View("share", "/share", "/share"),
)
