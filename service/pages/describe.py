"""A page in words, for whoever cannot see it."""

from __future__ import annotations

from service.pages.page import Page


def describe_page(page: Page) -> str:
    """Give the words of a face in the order of reading, what is said twice in a row once."""
    said: list[str] = []
    for block in page.blocks:
        words = getattr(block, "whole", "") or getattr(block, "alt", "")
        if words and (not said or said[-1] != words):
            said.append(words)
    return ". ".join(said)
