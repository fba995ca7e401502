from __future__ import annotations

import httpx

from tests.web.views.opened import show


def test_runs_are_listed_with_their_files(printed: httpx.Client) -> None:
    """Each leads to its page; before the first there is none."""
    page = show(printed, "/runs")
    assert 'href="/run/1"' in page
    assert "end-label, A4 2x4 99.1x67.7.pdf" in page
    assert "Nothing has been printed yet" in show(printed, "/runs?after=1")
    show(printed, "/runs?after=x", status=422)
