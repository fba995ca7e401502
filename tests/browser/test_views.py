from __future__ import annotations

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, Request

from service.web.views.routes import PARTS
from tests.browser.views import VIEWS, View

pytestmark = [pytest.mark.browser, pytest.mark.slow]

WIDTHS_PX = (360, 820, 1440)
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
MOST_BYTES = 150_000
"""A page without photos, with all that it loads."""
SMALLEST_TARGET_PX = 24
"""WCAG 2.2, success criterion 2.5.8."""

each_view = pytest.mark.parametrize("view", VIEWS, ids=lambda view: view.name)


def test_every_page_is_looked_at() -> None:
    """A page that no view shows would never be tried in a browser."""
    routes = {
        route.path for part in PARTS for route in part.router.routes if "GET" in route.methods
    }
    assert routes - {view.route for view in VIEWS} == set()


@each_view
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing(chromium: Browser, museum: str, view: View, scheme: str) -> None:
    """Nobody is kept out: WCAG 2.2 AA and best practice, in both schemes (axe-core)."""
    with chromium.new_context(color_scheme=scheme, viewport={"width": 820, "height": 1100}) as tab:  # type: ignore[arg-type]
        page = tab.new_page()
        page.goto(museum + view.address)
        options = {"runOnly": {"type": "tag", "values": RULES}}
        results = Axe().run(page, options=options)
    assert results.violations_count == 0, results.generate_report()


@each_view
@pytest.mark.parametrize("width_px", WIDTHS_PX)
def test_nothing_stands_beside_the_window(
    chromium: Browser, museum: str, view: View, width_px: int
) -> None:
    """No page has to be pushed sideways (WCAG 2.2, 1.4.10)."""
    with chromium.new_context(viewport={"width": width_px, "height": 800}) as tab:
        page = tab.new_page()
        page.goto(museum + view.address)
        assert page.evaluate("document.documentElement.scrollWidth") <= width_px


@each_view
def test_a_page_is_light_and_asks_nobody_else(chromium: Browser, museum: str, view: View) -> None:
    """All it loads comes from here, weighs little without photos, and nothing is complained of."""
    asked: list[Request] = []
    said: list[str] = []
    with chromium.new_context(viewport={"width": 1440, "height": 900}) as tab:
        page = tab.new_page()
        page.on("request", lambda request: asked.append(request))  # noqa: PLW0108 - it marks what it is given
        page.on("console", lambda message: said.append(message.text))
        page.on("pageerror", lambda error: said.append(str(error)))
        page.goto(museum + view.address, wait_until="networkidle")
        weight_bytes = sum(_weigh(request) for request in asked)
    assert [one.url for one in asked if not one.url.startswith((museum, "blob:"))] == []
    assert said == []
    assert weight_bytes < MOST_BYTES


@each_view
def test_targets_are_large_enough(chromium: Browser, museum: str, view: View) -> None:
    """A finger in a glove hits what it means; links within a sentence are excepted (2.5.8)."""
    with chromium.new_context(viewport={"width": 360, "height": 740}) as tab:
        page = tab.new_page()
        page.goto(museum + view.address)
        small = _find_small_targets(page)
    assert small == []


def _weigh(request: Request) -> int:
    response = request.response()
    is_photo = request.resource_type == "image" and "svg" not in request.url
    return 0 if response is None or is_photo else len(response.body())


def _find_small_targets(page: Page) -> list[str]:
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
