"""Addresses of photos, made as large as a page shows them."""

from __future__ import annotations

from service.web.views.shell.addresses import page_with

SMALL_PX, MIDDLE_PX, LARGE_PX, WHOLE_PX = 160, 400, 640, 1280
"""Widths of a photo in a list, among what lies in a box, on its own page, and looked at closely."""


def page_of_picture(sha256: str, object_number: str, width_px: int) -> str:
    """Give the address of a photo as its object shows it, turned and cropped."""
    return page_with(f"/api/photos/{sha256}", object=object_number, width_px=width_px)


def page_of_whole(sha256: str, width_px: int) -> str:
    """Give the address of the whole of a photo, as it came."""
    return page_with(f"/api/photos/{sha256}", width_px=width_px)
