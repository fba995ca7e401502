"""Addresses of pages that a number stands in; a slash in a number stays one."""

from __future__ import annotations

from urllib.parse import quote, urlencode


def page_of_container(container_number: str) -> str:
    """Give the page of a container."""
    return f"/containers/{quote(container_number)}"


def page_of_object(object_number: str) -> str:
    """Give the page of an object."""
    return f"/objects/{quote(object_number)}"


def page_of_user(name: str) -> str:
    """Give the page of a user."""
    return page_with("/people", who=name)


def page_with(path: str, **asked: str | int) -> str:
    """Give a path with a query; what is empty is left out."""
    query = urlencode({name: value for name, value in asked.items() if value not in {"", 0}})
    return f"{path}?{query}" if query else path
