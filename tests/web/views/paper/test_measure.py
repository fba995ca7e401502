from __future__ import annotations

from urllib.parse import urlencode

import httpx

from service.errors import StockError
from service.web.views.paper.measure import FIELDS, tell_measure
from tests.web.views.opened import follow, send, show

MEASURES = {
    "name": "Green box",
    "page": "A4",
    "columns": "2",
    "rows": "4",
    "unit": "mm",
    "label_width": "99.1",
    "label_height": "67.7",
    "pitch_x": "101.6",
}
DRAWN = f"/stocks/measure?{urlencode(MEASURES)}"


def test_a_sheet_is_drawn_before_it_is_kept(client: httpx.Client) -> None:
    """Typed, it is shown with what it suits; nothing is kept until that is asked for."""
    page = show(client, "/stocks/measure")
    assert "Keep it" not in page
    page = show(client, DRAWN)
    assert "8 labels" in page
    assert "End label" in page
    assert "Green box" not in show(client, "/stocks")
    page = follow(client, send(client, DRAWN, "/stocks/keep", MEASURES))
    assert "Green box is kept" in page
    assert "<h3>Green box</h3>" in page


def test_what_cannot_be_is_told_beside_its_measure(client: httpx.Client) -> None:
    """What was typed stays; neither a look nor keeping takes it."""
    wrong = MEASURES | {"pitch_x": "90"}
    page = show(client, f"/stocks/measure?{urlencode(wrong)}", status=422)
    assert 'id="fault-pitch_x"' in page
    assert "c (pitch x) is less than the label width, so labels overlap." in page
    assert 'value="67.7"' in page
    answer = send(client, "/you", "/stocks/keep", wrong, status=422)
    assert 'id="fault-pitch_x"' in answer.text


def test_every_fault_has_a_field() -> None:
    """A measure that is worked out from others is corrected where it comes from."""
    for measure in (
        *("name", "page", "page width", "columns x rows", "label width", "pitch y"),
        *("the last column", "the last row", "left", "radius", "medium", "unit", "file"),
    ):
        (field,) = tell_measure(StockError("X", measure=measure, reason="is odd"))
        assert field in FIELDS
