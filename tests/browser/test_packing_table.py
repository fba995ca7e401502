"""The packing table in a browser: nothing that was taken is lost, and nothing arrives twice."""

from __future__ import annotations

import io
import json
import threading
from pathlib import Path
from urllib.request import urlopen

import numpy as np
import pytest
from PIL import Image
from playwright.sync_api import Browser, BrowserContext, Page, Route, expect

from tests.browser.line import broken_line
from tests.browser.table import EMPTY, TABLE, open_table, take

pytestmark = [pytest.mark.browser, pytest.mark.slow]

BOX = "B-027"
SIX_MB = 6_000_000


@pytest.fixture
def photos(tmp_path: Path) -> list[Path]:
    """Give three photos as a camera leaves them, all called alike."""
    made = []
    for at in range(3):
        path = tmp_path / str(at) / "image.jpg"
        path.parent.mkdir()
        Image.new("RGB", (640, 480), (60 + 60 * at, 90, 90)).save(path, "JPEG")
        made.append(path)
    return made


@pytest.fixture
def large_photo(tmp_path: Path) -> Path:
    """Give a photo of 6 MB."""
    noise = np.random.default_rng(7).integers(0, 255, (2300, 3000, 3), dtype=np.uint8)
    path = tmp_path / "large.jpg"
    Image.fromarray(noise).save(path, "JPEG", quality=90)
    assert path.stat().st_size > SIX_MB
    return path


def ask(museum: str, path: str) -> dict[str, object]:
    """Read what the service knows."""
    with urlopen(museum + path) as answer:  # noqa: S310 - our own service on the loopback
        read: dict[str, object] = json.load(io.BytesIO(answer.read()))
        return read


def rows_of(page: Page) -> int:
    """Count what waits on the device."""
    return page.locator(".pack-row").count()


def wait_until_sent(page: Page, ratio: float) -> None:
    """Wait until so much of a photo is on its way, but no more than half."""
    sent = 0.0
    for _ in range(200):
        sent = page.locator(".pack-row progress").evaluate("bar => bar.value")
        if sent > ratio:
            break
        page.wait_for_timeout(50)
    assert ratio < sent < 0.5


def test_what_is_taken_without_connection_arrives_once(
    phone: BrowserContext, own_museum: str, photos: list[Path]
) -> None:
    """Three photos, a reload in between, and each arrives as one object with one photo."""
    page = open_table(phone, own_museum)
    phone.set_offline(True)
    for at, photo in enumerate(photos):
        take(page, f"2026.9.{at}", photo)
    expect(page.locator(".pack-row")).to_have_count(3)
    page.reload()
    expect(page.locator(".pack-row")).to_have_count(3)
    expect(page.locator(".pack-row").first).to_contain_text("No connection")
    phone.set_offline(False)
    expect(page.locator(".pack-row")).to_have_count(0, timeout=30_000)
    expect(page.locator("#pack-lying")).to_contain_text("2026.9.2")
    before = ask(own_museum, f"/api/containers/{EMPTY}")["revision"]
    for at in range(3):
        events = ask(own_museum, f"/api/objects/2026.9.{at}/history")["events"]
        assert isinstance(events, list)
        assert [one["verb"] for one in events].count("photo brought") == 1
        assert [one["verb"] for one in events].count("put in") == 1
    page.reload()
    assert rows_of(page) == 0
    assert ask(own_museum, f"/api/containers/{EMPTY}")["revision"] == before


def test_a_closed_page_goes_on_later(
    phone: BrowserContext, own_museum: str, photos: list[Path]
) -> None:
    """What waits is kept by the browser, not by the page."""
    page = open_table(phone, own_museum)
    phone.set_offline(True)
    take(page, "2026.9.0", photos[0])
    page.close()
    phone.set_offline(False)
    again = open_table(phone, own_museum)
    expect(again.locator("#pack-lying")).to_contain_text("2026.9.0", timeout=30_000)
    assert rows_of(again) == 0


def test_a_photo_cut_in_the_middle_is_sent_again_whole(
    phone: BrowserContext, own_museum: str, large_photo: Path
) -> None:
    """Over a slow line that breaks off: no half photo is kept, and the whole one comes once."""
    with broken_line(own_museum, most_bytes=SIX_MB // 3) as (line, near):
        page = open_table(phone, near)
        session = phone.new_cdp_session(page)
        session.send("Network.enable")
        slow = {"latency": 20, "downloadThroughput": -1, "uploadThroughput": 1_500_000}
        session.send("Network.emulateNetworkConditions", {"offline": False, **slow})
        line.break_it()
        take(page, "2026.9.5", large_photo)
        wait_until_sent(page, 0.1)
        expect(page.locator(".pack-row .state")).to_have_text("Waits to be sent", timeout=60_000)
        assert line.cuts >= 1
        line.mend()
        expect(page.locator("#pack-lying")).to_contain_text("2026.9.5", timeout=60_000)
        assert rows_of(page) == 0
    address = page.locator("#pack-lying img").first.get_attribute("src")
    events = ask(own_museum, "/api/objects/2026.9.5/history")["events"]
    assert isinstance(events, list)
    assert address is not None
    brought = [one["detail"]["sha256"] for one in events if one["verb"] == "photo brought"]
    assert brought == [address.partition("?")[0].rpartition("/")[2]]


def test_a_lost_answer_makes_nothing_twice(
    phone: BrowserContext, own_museum: str, photos: list[Path]
) -> None:
    """The service took it but the phone never heard: sent again under its key, once it stays."""
    page = open_table(phone, own_museum)
    lost = threading.Event()

    def lose_first_answer(route: Route) -> None:
        if lost.is_set():
            route.continue_()
            return
        lost.set()
        route.fetch()
        route.abort()

    page.route("**/pack/item", lose_first_answer)
    take(page, "2026.9.6", photos[0])
    expect(page.locator(".pack-row")).to_have_count(0, timeout=30_000)
    events = ask(own_museum, "/api/objects/2026.9.6/history")["events"]
    assert isinstance(events, list)
    assert [one["verb"] for one in events].count("put in") == 1


def test_a_refusal_says_what_to_do(
    phone: BrowserContext, own_museum: str, photos: list[Path], tmp_path: Path
) -> None:
    """Beside the thing: another number, move it here, without the photo, or discard it."""
    page = open_table(phone, own_museum)
    take(page, "X.112", photos[0])
    row = page.locator(".pack-row")
    expect(row).to_contain_text(f"it lies in {BOX}")
    row.get_by_role("button", name="Change the number").click()
    row.get_by_label("Right number").fill("2026.9.7")
    row.get_by_role("button", name="Send with this number").click()
    expect(page.locator("#pack-lying")).to_contain_text("2026.9.7")
    broken = tmp_path / "broken.jpg"
    broken.write_bytes(b"no photo")
    take(page, "2026.9.8", broken)
    row.get_by_role("button", name="Discard").click()
    expect(row).to_contain_text("Discarded")
    row.get_by_role("button", name="Undo").click()
    row.get_by_role("button", name="Send without the photo").click()
    expect(page.locator("#pack-lying")).to_contain_text("2026.9.8")
    take(page, "X.112", photos[1])
    row.get_by_role("button", name="Move it here").click()
    expect(page.locator("#pack-lying")).to_contain_text("X.112")
    page.locator("#pack-dones .notice", has_text="X.112").get_by_role("button").click()
    expect(page.locator("#pack-lying")).not_to_contain_text("X.112")


def test_without_a_secure_connection_the_page_says_so(
    phone: BrowserContext, own_museum: str, photos: list[Path]
) -> None:
    """There is no worker then, but the queue works."""
    phone.add_init_script(
        "Object.defineProperty(window, 'isSecureContext', {value: false});"
        "delete Navigator.prototype.serviceWorker;"
    )
    page = phone.new_page()
    page.goto(own_museum + TABLE)
    expect(page.locator("[data-way=queue]")).to_be_visible()
    phone.set_offline(True)
    take(page, "2026.9.9", photos[0])
    phone.set_offline(False)
    expect(page.locator("#pack-lying")).to_contain_text("2026.9.9", timeout=30_000)


def test_another_box_is_never_shown_in_place_of_one(phone: BrowserContext, own_museum: str) -> None:
    """Without connection only pages that were opened here are shown."""
    page = open_table(phone, own_museum)
    phone.set_offline(True)
    page.goto(f"{own_museum}/pack/table?container={BOX}")
    expect(page.get_by_role("heading", level=1)).to_have_text("No connection")
    page.goto(f"{own_museum}{TABLE}&layer=2")
    expect(page.locator("h1")).to_contain_text(EMPTY)


def test_without_script_one_form_does_it(
    chromium: Browser, own_museum: str, photos: list[Path]
) -> None:
    """A photo, a number, a layer: saved, shown, and taken back."""
    with chromium.new_context(java_script_enabled=False) as context:
        page = context.new_page()
        page.goto(own_museum + TABLE)
        page.get_by_label("Object number").fill("2026.9.4")
        page.get_by_label("Camera").set_input_files(photos[0])
        page.get_by_label("Layer").fill("3")
        page.get_by_role("button", name="Put it in").click()
        expect(page.locator("#notice")).to_contain_text("2026.9.4 is in, with a new record.")
        expect(page.locator("#pack-lying")).to_contain_text("layer 3")
        assert page.get_by_label("Layer").input_value() == "3"
        page.locator("#notice").get_by_role("button", name="Undo").click()
        expect(page.locator("#notice")).to_contain_text("is taken back")
        expect(page.locator("#pack-lying")).not_to_contain_text("2026.9.4")
