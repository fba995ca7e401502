"""The whole circle, as a person goes it: bring records, pack, print, put on, repack, swap, look."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

pytestmark = [pytest.mark.browser, pytest.mark.slow, pytest.mark.print]

TABLE = """object_number,title,object_name,box,layer
PMM.1,Marlinspike,tool,B-1,1
PMM.2,Sail palm,tool,B-1,1
PMM.3,Fid,tool,B-1,2
"""
_PATIENCE_MS = 120_000


class Walker:
    """Somebody at a browser: goes by what is written on the page, and counts clicks and fields."""

    def __init__(self, page: Page, address: str) -> None:
        """Stand at the first page."""
        self.page = page
        self.address = address
        self.clicks = 0
        page.set_default_timeout(_PATIENCE_MS)
        self.open("/")

    def open(self, path: str) -> None:
        """Type an address, or scan one."""
        self.page.goto(self.address + path)

    def press(self, words: str, *, within: str = "main") -> None:
        """Press what carries these words, a button or a link."""
        place = self.page.locator(within)
        name = re.compile(rf"^\s*{re.escape(words)}\s*$")
        place.get_by_role("button", name=name).or_(
            place.get_by_role("link", name=name)
        ).last.click()
        self.clicks += 1

    def reads(self) -> str:
        """Read the page."""
        return self.page.locator("main").inner_text()

    def wait_for_run(self) -> str:
        """Wait until a print run is done, and give the path of its page."""
        link = self.page.locator("main a[href^='/run/']").first
        link.wait_for()
        return str(link.get_attribute("href"))


@pytest.fixture(params=[True, False], ids=["with script", "without script"])
def walker(request: pytest.FixtureRequest, chromium: Browser, new_museum: str) -> Iterator[Walker]:
    """Sit down before a store in which nothing is yet."""
    with chromium.new_context(java_script_enabled=request.param) as tab:
        yield Walker(tab.new_page(), new_museum)


@pytest.mark.timeout(600)
def test_the_circle_is_gone_by_what_stands_on_the_pages(walker: Walker, tmp_path: Path) -> None:
    """Each page leads to the next; the cards that a repack makes wrong are named, with the reason.

    From an empty store and a spreadsheet to a printed lid card takes at most twelve clicks.
    """
    table = tmp_path / "boat.csv"
    table.write_text(TABLE, encoding="utf-8")
    walker.press("Import a spreadsheet")
    walker.page.set_input_files("main input[type=file] >> nth=0", str(table))
    walker.press("Look at it")
    walker.page.get_by_role("heading", name="What will change").wait_for()
    assert "Packed for the first time: 3 objects" in walker.reads()
    walker.press("Take over")
    walker.press("Print the cards that are missing")
    walker.press("Next: the sheets")
    walker.press("Make the PDFs at once")
    run = walker.wait_for_run()
    assert walker.clicks <= 12
    walker.open(run)
    assert "Lid card r1" in walker.reads()
    _attach_all(walker, run)
    _take_out(walker)
    _see_what_is_wrong(walker)
    _check(walker)


def _attach_all(walker: Walker, run: str) -> None:
    walker.open(f"/attach?run={run.rsplit('/', 1)[1]}")
    walker.press("All 4 are on: B-1")
    assert "4 cards are on." in walker.reads()
    walker.open("/")
    assert "Every card that is attached tells the truth." in walker.reads()


def _take_out(walker: Walker) -> None:
    walker.open("/containers/B-1")
    walker.press("Change, move or take out PMM.3", within="#contents")
    walker.press("Take it out for good", within="#contents")
    walker.page.get_by_text("Fid", exact=True).wait_for(state="detached")


def _see_what_is_wrong(walker: Walker) -> None:
    walker.open("/")
    assert "PMM.3" in walker.reads()
    walker.press("Swap list to walk with")
    assert "B-1" in walker.reads()
    walker.open("/c/B-1?r=1&k=BBBB")
    assert "Current" not in walker.reads()


def _check(walker: Walker) -> None:
    walker.open("/checks")
    assert "B-1" in walker.reads()
