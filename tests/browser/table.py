"""The packing table as a packer uses it, and what a device keeps of it."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import BrowserContext, Page, expect

EMPTY = "B-031"
TABLE = f"/pack/table?container={EMPTY}"
KEPT_JS = """async () => {
    const kept = await (await caches.open('underlid-pack')).keys();
    return kept.map(one => new URL(one.url).pathname).filter(path => !path.startsWith('/assets/'));
}"""
WAITING_JS = """() => new Promise(resolve => {
    const opening = indexedDB.open('underlid-pack');
    opening.onsuccess = () => {
        const store = opening.result.objectStoreNames[0];
        const counting = opening.result.transaction(store).objectStore(store).count();
        counting.onsuccess = () => resolve(counting.result);
    };
})"""


def open_table(context: BrowserContext, museum: str) -> Page:
    """Open the table and wait until it works without connection, too."""
    page = context.new_page()
    page.goto(museum + TABLE)
    expect(page.locator("[data-way=all]")).to_be_visible()
    return page


def take(page: Page, number: str, photo: Path) -> None:
    """Put one thing in as a packer does."""
    page.get_by_label("Object number").fill(number)
    page.get_by_label("Camera").set_input_files(photo)
    page.get_by_role("button", name="Put it in").click()
    expect(page.get_by_label("Object number")).to_have_value("")
