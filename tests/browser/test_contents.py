"""Changing what lies in a container in a real browser, with and without script."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

pytestmark = [pytest.mark.browser, pytest.mark.slow]

BOX = "/containers/B-031"


def _numbers(page: Page) -> list[str]:
    return page.locator(".arrange > li .number").all_inner_texts()


def test_an_object_is_dragged_into_a_new_layer(desktop: BrowserContext, own_museum: str) -> None:
    """By its handle to the empty place at the bottom; the order is kept at once."""
    page = desktop.new_page()
    page.set_viewport_size({"width": 1440, "height": 2400})
    page.goto(f"{own_museum}{BOX}?arrange=yes")
    first = _numbers(page)[0]
    start = page.locator(".arrange .handle").first.bounding_box()
    aim = page.locator(".arrange:empty").bounding_box()
    assert start is not None
    assert aim is not None
    page.mouse.move(start["x"] + 5, start["y"] + 5)
    page.mouse.down()
    page.mouse.move(aim["x"] + 50, aim["y"] + 20, steps=12)
    page.mouse.up()
    expect(page.locator("#notice")).to_contain_text("The new order is kept.")
    assert _numbers(page)[-1] == first


def test_a_step_by_keyboard_keeps_its_button(desktop: BrowserContext, own_museum: str) -> None:
    """So that it can be pressed again."""
    page = desktop.new_page()
    page.goto(f"{own_museum}{BOX}?arrange=yes")
    button = page.locator('[id^="layer-down-"]').first
    name = button.get_attribute("id")
    button.press("Enter")
    expect(page.locator("#notice")).to_contain_text("one layer lower")
    expect(page.locator(f"#{name}")).to_be_focused()


def test_what_is_taken_out_comes_back(desktop: BrowserContext, own_museum: str) -> None:
    """The card beside it changes with the contents; Undo is a plain form."""
    page = desktop.new_page()
    page.goto(own_museum + BOX)
    before = page.locator(".preview img").get_attribute("src")
    page.locator(".object .change").first.click()
    page.get_by_role("button", name="Take it out for good").click()
    expect(page.locator("#notice")).to_contain_text("is taken out.")
    expect(page.locator("#contents-title")).to_be_focused()
    assert page.locator(".preview img").get_attribute("src") != before
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("#notice")).to_contain_text("Packed again")


def test_the_second_of_two_people_is_shown_both(
    desktop: BrowserContext, phone: BrowserContext, own_museum: str
) -> None:
    """And does it again on what is there now."""
    mine, theirs = desktop.new_page(), phone.new_page()
    for page, number in ((mine, "MINE.1"), (theirs, "THEIRS.1")):
        page.goto(own_museum + BOX)
        page.get_by_label("Put in: number or title").fill(number)
        page.get_by_role("button", name="Put in", exact=True).click()
        page.get_by_label("What it is").fill("Thole pin")
    for page in (theirs, mine):
        page.get_by_role("button", name="Make it and put it in").click()
    expect(theirs.locator("#notice")).to_contain_text("THEIRS.1 is in.")
    expect(mine.locator("#faults")).to_be_focused()
    expect(mine.locator(".both")).to_contain_text("THEIRS.1")
    mine.get_by_role("button", name="Do mine again").click()
    expect(mine.locator("#notice")).to_contain_text("MINE.1 is in.")


def test_without_script_an_unknown_object_goes_in(chromium: Browser, own_museum: str) -> None:
    """Typed, found to be in no record, made and put in: plain forms all along."""
    with chromium.new_context(java_script_enabled=False) as context:
        page = context.new_page()
        page.goto(own_museum + BOX)
        page.get_by_label("Put in: number or title").fill("Z/9")
        page.get_by_role("button", name="Put in", exact=True).click()
        page.get_by_label("What it is").fill("Thole pin")
        page.get_by_role("button", name="Make it and put it in").click()
        expect(page.locator("#notice")).to_contain_text("Z/9 is in.")
