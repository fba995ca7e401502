"""What a device still knows of boxes and photos when nobody may see them on it any more."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.table import KEPT_JS, TABLE, WAITING_JS, open_table, take
from tests.web.store.people.people import CASS, PASSWORD, add_people

pytestmark = [pytest.mark.browser, pytest.mark.slow]

AGE_JS = """async (hours) => {
    const cache = await caches.open("underlid-pack");
    const [request] = (await cache.keys()).filter((one) => one.url.includes("/pack/table"));
    const kept = await cache.match(request, { ignoreVary: true });
    const date = new Date(Date.now() - hours * 3600 * 1000).toUTCString();
    await cache.put(request, new Response(await kept.text(), {
        headers: { "Content-Type": "text/html; charset=utf-8", Date: date },
    }));
}"""


def sign_in(page: Page, museum: str) -> None:
    """Sign in as somebody who packs."""
    page.goto(f"{museum}/sign-in?to=%2Fpack")
    page.get_by_label("Your name").fill(CASS)
    page.get_by_label("Password").fill(PASSWORD)
    page.get_by_role("button", name="Sign in", exact=True).click()
    expect(page.get_by_role("button", name="Sign out")).to_be_visible()


def test_a_phone_that_is_signed_out_forgets_the_boxes(
    phone: BrowserContext, own_museum: str, photo: Path, tmp_path: Path
) -> None:
    """Pages kept for packing go once nobody is signed in; what waits to be sent stays."""
    page = open_table(phone, own_museum)
    assert "/pack/table" in page.evaluate(KEPT_JS)
    phone.set_offline(True)
    take(page, "2026.9.9", photo)
    expect(page.locator(".pack-row")).to_have_count(1)
    add_people(tmp_path / "data")
    phone.set_offline(False)
    page.goto(own_museum + TABLE)
    expect(page.get_by_role("heading", level=1)).to_have_text("Sign in")
    page.wait_for_function(f"async () => (await ({KEPT_JS})()).join() === '/pack/offline'")
    assert page.evaluate(WAITING_JS) == 1


def test_a_phone_that_is_refused_forgets_at_once(
    phone: BrowserContext, own_museum: str, photo: Path, tmp_path: Path
) -> None:
    """Its pairing was withdrawn while the table stood open: the next thing sent tells it."""
    page = open_table(phone, own_museum)
    add_people(tmp_path / "data")
    take(page, "2026.9.9", photo)
    expect(page.locator(".pack-row")).to_contain_text("Sign in again")
    page.wait_for_function(f"async () => (await ({KEPT_JS})()).join() === '/pack/offline'")
    assert page.evaluate(WAITING_JS) == 1


@pytest.mark.parametrize(("hours", "heading"), [(23, "B-031"), (25, "No connection")])
def test_a_kept_box_is_forgotten_after_a_day(
    phone: BrowserContext, own_museum: str, hours: int, heading: str
) -> None:
    """A phone left in a drawer, or lost, shows nobody what lies in it."""
    page = open_table(phone, own_museum)
    page.evaluate(AGE_JS, hours)
    phone.set_offline(True)
    page.goto(own_museum + TABLE)
    expect(page.get_by_role("heading", level=1)).to_contain_text(heading)


def test_what_waits_is_told_of_before_signing_out(
    phone: BrowserContext, own_museum: str, photo: Path, tmp_path: Path
) -> None:
    """Once; a second press leaves, and what waits stays on the device."""
    add_people(tmp_path / "data")
    page = phone.new_page()
    sign_in(page, own_museum)
    page.goto(own_museum + TABLE)
    page.route("**/pack/item", lambda route: route.abort())
    take(page, "2026.9.9", photo)
    expect(page.locator(".pack-row")).to_have_count(1)
    page.get_by_role("button", name="Sign out").click()
    expect(page.get_by_text("are not sent yet. They stay on it")).to_be_visible()
    page.get_by_role("button", name="Sign out").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Sign in")
    assert page.evaluate(WAITING_JS) == 1


def test_nothing_holds_up_who_has_sent_all(
    phone: BrowserContext, own_museum: str, tmp_path: Path
) -> None:
    """One press signs out."""
    add_people(tmp_path / "data")
    page = phone.new_page()
    sign_in(page, own_museum)
    page.get_by_role("button", name="Sign out").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Sign in")
