"""Cropping a photo on the picture itself: by pointer and by keys, with the fields in step."""

from __future__ import annotations

import pytest
from playwright.sync_api import BrowserContext, expect

from tests.browser.views import FRONT

pytestmark = [pytest.mark.browser, pytest.mark.slow]

PAGE = f"/photo?object=1931.14.7&photo={FRONT}"


def test_edges_follow_pointer_and_keys(phone: BrowserContext, own_museum: str) -> None:
    """What is dragged stands in the fields, and is what cards show afterwards."""
    page = phone.new_page()
    page.goto(own_museum + PAGE)
    left = page.get_by_role("slider", name="Left")
    left.scroll_into_view_if_needed()
    handle, frame = left.bounding_box(), page.locator("#crop-frame").bounding_box()
    assert handle is not None
    assert frame is not None
    down = handle["y"] + handle["height"] / 2
    page.mouse.move(handle["x"] + handle["width"] / 2, down)
    page.mouse.down()
    page.mouse.move(frame["x"] + frame["width"] / 4, down, steps=5)
    page.mouse.up()
    bottom = page.get_by_role("slider", name="Bottom")
    bottom.focus()
    for _ in range(3):
        page.keyboard.press("ArrowUp")
    expect(page.get_by_label("Left", exact=True)).to_have_value("25")
    expect(page.get_by_label("Bottom", exact=True)).to_have_value("3")
    assert bottom.get_attribute("aria-valuenow") == "3"
    page.get_by_label("Right", exact=True).fill("80")
    left.press("ArrowRight")
    expect(page.get_by_label("Left", exact=True)).to_have_value("15")
    page.get_by_label("Right", exact=True).fill("10")
    page.get_by_role("button", name="Crop it so").click()
    expect(page.locator("#notice")).to_contain_text("The photo is cropped.")
    expect(page.get_by_label("Right", exact=True)).to_have_value("10")
