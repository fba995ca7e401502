from __future__ import annotations

import pytest
from playwright.sync_api import BrowserContext, expect

pytestmark = [pytest.mark.browser, pytest.mark.slow]


@pytest.mark.timeout(300)
def test_a_box_is_printed_by_keyboard_alone(desktop: BrowserContext, own_museum: str) -> None:
    """From the desk over the sheets and their pictures to the PDFs, without loading anew."""
    page = desktop.new_page()
    page.goto(f"{own_museum}/print?containers=B-027")
    page.get_by_label("Contents list").first.focus()
    page.keyboard.press("Space")
    page.get_by_role("button", name="Next: the sheets").focus()
    page.keyboard.press("Enter")
    page.wait_for_url("**/print/sheets")
    labels = page.locator("section:has(.drawn)").first
    begun = int(labels.locator("output").inner_text())
    labels.get_by_label(f"Position {begun},").focus()
    page.keyboard.press("Space")
    expect(labels.locator("output")).to_have_text(str(begun + 1))
    page.keyboard.press("ArrowRight")
    expect(labels.get_by_label(f"Position {begun + 1},")).to_be_focused()
    page.get_by_role("button", name="look at every page").focus()
    page.keyboard.press("Enter")
    expect(page.locator(".looked img").first).to_be_visible(timeout=60_000)
    page.get_by_role("button", name="Make the PDFs").focus()
    page.keyboard.press("Enter")
    page.get_by_role("link", name="Open the PDFs").click(timeout=120_000)
    expect(page.get_by_role("heading", name="Run")).to_be_visible()
