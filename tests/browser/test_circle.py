"""The whole circle, as a person goes it: bring records, pack, print, put on, repack, swap, look."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Error, Page

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

    def bring(self, path: Path) -> None:
        """Choose a file in the first field for one."""
        self.page.set_input_files("main input[type=file] >> nth=0", str(path))

    def reads(self) -> str:
        """Read the page."""
        return self.page.locator("main").inner_text()

    def wait_for_run(self) -> str:
        """Wait until a print run is done, and give the path of its page."""
        link = self.page.locator("main a[href^='/run/']").first
        link.wait_for()
        return str(link.get_attribute("href"))


class KeyboardWalker(Walker):
    """Somebody without a mouse: goes from control to control, and sees where they are."""

    def press(self, words: str, *, within: str = "main") -> None:
        """Go on by Tab to what carries these words, and press Enter."""
        self._go_to(f"{within} :is(a, button, summary)", words)
        self.page.keyboard.press("Enter")
        self.page.wait_for_timeout(_A_MOMENT_MS)
        self.clicks += 1

    def bring(self, path: Path) -> None:
        """Open the dialogue for files by the keyboard."""
        self._go_to("main input[type=file]")
        with self.page.expect_file_chooser() as chooser:
            self.page.keyboard.press("Space")
        chooser.value.set_files(str(path))

    def _look(self, selector: str, words: str) -> dict[str, Any]:
        """Look where the focus is; once more where another page came meanwhile."""
        try:
            found: dict[str, Any] = self.page.evaluate(_WHERE, [selector, words])
        except Error:
            self.page.wait_for_load_state()
            found = self.page.evaluate(_WHERE, [selector, words])
        return found

    def _go_to(self, selector: str, words: str = "") -> None:
        """Press Tab until it is reached; what has the focus is seen, and nothing lies over it.

        WCAG 2.2, success criteria 2.4.7 (Focus Visible) and 2.4.11 (Focus Not Obscured).
        """
        for _ in range(_MOST_STEPS):
            self.page.keyboard.press("Tab")
            at = self._look(selector, words)
            assert at["seen"], f"nobody sees the focus: {at}"
            if at["reached"]:
                return
        pytest.fail(f"no way by keyboard to {words or selector}")


_MOST_STEPS = 200
_A_MOMENT_MS = 500
"""What anybody needs to see what a key has done, before the next one."""
_WHERE = """([selector, words]) => {
    const one = document.activeElement;
    if (one === null || one === document.body) return {reached: false, seen: true, what: 'nothing'};
    const name = (one.getAttribute('aria-label') || one.innerText || '').trim();
    // The parts of a date have marks of the browser's own within the field.
    const drawn = one.type === 'date' || [one, one.closest('label') || one].some(each => {
        const style = getComputedStyle(each);
        return style.outlineStyle !== 'none' || style.boxShadow !== 'none';
    });
    const box = one.getBoundingClientRect();
    const corners = [[box.left + 2, box.top + 2], [box.right - 2, box.bottom - 2],
        [(box.left + box.right) / 2, (box.top + box.bottom) / 2]];
    const isFree = corners.some(([x, y]) => {
        const top = document.elementFromPoint(x, y);
        return top !== null && (one.contains(top) || top.contains(one));
    });
    return {
        reached: one.matches(selector) && (!words || name === words),
        seen: drawn && isFree, drawn, isFree,
        what: one.outerHTML.slice(0, 120),
    };
}"""
_WAYS = {
    "with script": (Walker, True),
    "without script": (Walker, False),
    "by keyboard alone": (KeyboardWalker, True),
    "by keyboard, without script": (KeyboardWalker, False),
}


@pytest.fixture(params=_WAYS)
def walker(request: pytest.FixtureRequest, chromium: Browser, new_museum: str) -> Iterator[Walker]:
    """Sit down before a store in which nothing is yet."""
    kind, has_script = _WAYS[request.param]
    with chromium.new_context(java_script_enabled=has_script) as tab:
        yield kind(tab.new_page(), new_museum)


@pytest.mark.timeout(600)
def test_the_circle_is_gone_by_what_stands_on_the_pages(walker: Walker, tmp_path: Path) -> None:
    """Each page leads to the next; the cards that a repack makes wrong are named, with the reason.

    From an empty store and a spreadsheet to a printed lid card takes at most twelve clicks.
    """
    table = tmp_path / "boat.csv"
    table.write_text(TABLE, encoding="utf-8")
    walker.press("Import a spreadsheet")
    walker.bring(table)
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
