"""Where the keyboard stands on a page that was just loaded."""

from __future__ import annotations

import pytest
from playwright.sync_api import BrowserContext, expect

pytestmark = [pytest.mark.browser, pytest.mark.slow]


def test_the_head_of_a_page_can_be_skipped(desktop: BrowserContext, museum: str) -> None:
    """WCAG 2.2, 2.4.1: the first stop leads past search and menu to the page itself."""
    page = desktop.new_page()
    page.goto(f"{museum}/containers")
    page.keyboard.press("Tab")
    skip = page.get_by_role("link", name="Skip to the page")
    expect(skip).to_be_focused()
    expect(skip).to_be_in_viewport()
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    stands: str = page.evaluate("document.activeElement.closest('main')?.id ?? ''")
    assert stands == "main"


def test_the_keyboard_stands_on_what_is_wrong(desktop: BrowserContext, own_museum: str) -> None:
    """A form that was not taken comes back at its summary, whose links lead to the fields."""
    page = desktop.new_page()
    page.goto(f"{own_museum}/new/container")
    page.get_by_label("Number", exact=True).evaluate("one => one.required = false")
    page.get_by_role("button", name="Keep").click()
    faults = page.locator("#faults")
    expect(faults).to_be_focused()
    faults.get_by_role("link").first.press("Enter")
    expect(page.get_by_label("Number", exact=True)).to_be_focused()
    expect(page.get_by_label("Number", exact=True)).to_have_attribute("aria-invalid", "true")
