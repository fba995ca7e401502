from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, Request, ViewportSize

from service.languages.page_words import ENGLISH, list_page_languages
from service.web.views.routes import PARTS
from tests.browser.crowd import CROWDED
from tests.browser.views import FILES, VIEWS, View

pytestmark = [pytest.mark.browser, pytest.mark.slow]

LANGUAGES = [one for one in list_page_languages() if one != ENGLISH]
WIDTHS_PX = (360, 820, 1440)
RULES = {
    "light": {
        "type": "tag",
        "values": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    },
    "dark": {"type": "rule", "values": ["color-contrast"]},
}
"""In the dark only the colours differ, as a test of the style holds."""
_SCHEMES: tuple[Literal["light", "dark"], ...] = ("light", "dark")
IN_THE_DARK = {
    "patterns",
    "today",
    "container",
    "packing table",
    "a print run",
    "checks",
    "scanned",
}
"""Every piece of the pages stands on the first of these, the others as they are used."""
MOST_BYTES = 150_000
"""A page without photos, with all that it loads, as it goes over the line."""
SMALLEST_TARGET_PX = 24
"""WCAG 2.2, success criterion 2.5.8."""


def test_every_page_is_looked_at() -> None:
    """A page that no view shows would never be tried in a browser."""
    routes = {
        route.path for part in PARTS for route in part.router.routes if "GET" in route.methods
    }
    assert routes - FILES - {view.route for view in VIEWS} == set()


@pytest.mark.parametrize("view", VIEWS, ids=lambda view: view.name)
def test_a_page_is_for_everybody(chromium: Browser, museum: str, view: View) -> None:
    """Nobody is kept out, nothing is pushed sideways, and nobody else is asked.

    WCAG 2.2 AA and best practice as axe-core finds them, in the dark where all pieces stand; 1.4.10
    at three widths; 2.5.8; no complaint in the console; at most 150 KB without photos.
    """
    with chromium.new_context(viewport={"width": 820, "height": 1100}) as tab:
        page = tab.new_page()
        asked: list[Request] = []
        said: list[str] = []
        page.on("request", lambda request: asked.append(request))  # noqa: PLW0108 - it marks it
        page.on("console", lambda message: said.append(message.text))
        page.on("pageerror", lambda error: said.append(str(error)))
        page.goto(museum + view.address)
        elsewhere = [one.url for one in asked if not one.url.startswith((museum, "blob:"))]
        weight_bytes = sum(_weigh(request) for request in asked)
        # Where nothing is to be found, or a picture is asked for again later, the browser notes it.
        said = [words for words in said if "404" not in words and "503" not in words]
        assert (elsewhere, said, weight_bytes < MOST_BYTES) == ([], [], True), weight_bytes
        assert list(_find_barriers(page, in_the_dark=view.name in IN_THE_DARK)) == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_longer_words_push_nothing_sideways(chromium: Browser, museum: str, language: str) -> None:
    """Every page holds on a small phone in every language (WCAG 2.2, 1.4.10), and says which."""
    size = ViewportSize(width=WIDTHS_PX[0], height=740)
    with chromium.new_context(viewport=size, locale=language) as tab:
        page = tab.new_page()
        for view in VIEWS:
            page.goto(museum + view.address)
            reach_px = page.evaluate("document.documentElement.scrollWidth")
            small = list(_find_small_targets(page))
            assert (reach_px <= WIDTHS_PX[0], small) == (True, []), view
            assert page.evaluate("document.documentElement.lang") in {language, ""}, view


def test_four_hundred_objects_make_no_heavy_page(chromium: Browser, crowded_museum: str) -> None:
    """Whatever shows a container stays below 150 KB."""
    for path in (
        f"/containers/{CROWDED}",
        f"/containers/{CROWDED}?arrange=yes&begin=61",
        f"/pack/table?container={CROWDED}",
        f"/pack/packed/{CROWDED}",
        f"/history/container/{CROWDED}?revision=1",
        f"/checks/look?container={CROWDED}",
        f"/c/{CROWDED}",
    ):
        with chromium.new_context() as tab:
            page = tab.new_page()
            asked: list[Request] = []
            page.on("request", lambda request: asked.append(request))  # noqa: B023, PLW0108 - it marks it
            page.goto(crowded_museum + path, wait_until="networkidle")
            weight_bytes = sum(_weigh(request) for request in asked)
            assert 5_000 < weight_bytes < MOST_BYTES, (path, weight_bytes)


def _find_barriers(page: Page, *, in_the_dark: bool) -> Iterator[str]:
    for scheme in _SCHEMES if in_the_dark else _SCHEMES[:1]:
        page.emulate_media(color_scheme=scheme)
        results = Axe().run(page, options={"runOnly": RULES[scheme]})
        if results.violations_count:
            yield f"{scheme}: {results.generate_report()}"
    for width_px in WIDTHS_PX:
        page.set_viewport_size({"width": width_px, "height": 800})
        reach_px = page.evaluate("document.documentElement.scrollWidth")
        if reach_px > width_px:
            yield f"{width_px} px wide, and it reaches to {reach_px}"
        if width_px == WIDTHS_PX[0]:
            yield from _find_small_targets(page)


def _weigh(request: Request) -> int:
    response = request.response()
    is_photo = request.resource_type == "image" and "svg" not in request.url
    return 0 if response is None or is_photo else request.sizes()["responseBodySize"]


def _find_small_targets(page: Page) -> list[str]:
    """List what a finger would miss; links within a sentence are excepted."""
    found: list[str] = page.evaluate(
        """least => [...document.querySelectorAll('button,select,input,summary,a.button,nav a')]
            .filter(one => one.offsetParent && one.type !== 'hidden' && !one.closest('label'))
            .filter(one => {
                const box = one.getBoundingClientRect();
                return box.width < least || box.height < least;
            })
            .map(one => one.outerHTML.slice(0, 120))""",
        SMALLEST_TARGET_PX,
    )
    return found
