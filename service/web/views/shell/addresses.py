"""Addresses of pages that a number stands in; a slash in a number stays one."""

from __future__ import annotations

from urllib.parse import quote, urlencode


def page_of_container(container_number: str) -> str:
    """Give the page of a container."""
    return f"/containers/{quote(container_number)}"


def page_of_object(object_number: str) -> str:
    """Give the page of an object."""
    return f"/objects/{quote(object_number)}"


def page_of_photo(sha256: str) -> str:
    """Give the address of a photo, small enough to stand on a page."""
    return f"/photos/{sha256}"


def page_with(path: str, **asked: str | int) -> str:
    """Give a path with a query; what is empty is left out."""
    query = urlencode({name: value for name, value in asked.items() if value not in {"", 0}})
    return f"{path}?{query}" if query else path
