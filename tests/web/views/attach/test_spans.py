from __future__ import annotations

import pytest

from service.web.views.attach.spans import read_spans, write_spans


@pytest.mark.parametrize(
    ("numbers", "text"),
    [([], ""), ([5], "5"), ([4, 3, 5, 9], "3-5,9"), ([1, 3], "1,3")],
)
def test_numbers_come_back(numbers: list[int], text: str) -> None:
    """Neighbours are one span."""
    assert write_spans(numbers) == text
    assert read_spans(text) == sorted(numbers)


def test_what_is_no_span_is_left_out() -> None:
    """Forms are not always ours, and a span that never ends is cut."""
    assert read_spans("x,3-y,-,5-4,7") == [7]
    assert len(read_spans("1-999999999")) == 100_000
