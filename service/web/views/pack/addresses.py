"""Addresses of the packing table."""

from __future__ import annotations

from urllib.parse import quote

from service.web.views.shell.addresses import page_with

TABLE = "/pack/table"


def page_of_table(container_number: str, *, layer: int = 0) -> str:
    """Give the table of a container, with the layer that is being filled."""
    return page_with(TABLE, container=container_number, layer=layer)


def page_of_packed(container_number: str) -> str:
    """Give the summary of a container."""
    return f"/pack/packed/{quote(container_number)}"
