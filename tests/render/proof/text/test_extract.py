from __future__ import annotations

from dataclasses import replace

import pytest

from service.render.proof.text.extract import extract_faults
from service.render.proof.text.lines import lines_of
from tests.render.made import from_the_right, page, text
from tests.render.proof.plated import faults_in, plate_of

LINES = lines_of([text("B-042"), text("1 of 2", x_mm=50.0)])


@pytest.mark.parametrize("read", ["B-042 1 of 2", "1 of 2\r\nB-042", "B-0421of2"])
def test_order_and_blanks_do_not_count(read: str) -> None:
    """A reader sorts lines by its own lights and adds blanks."""
    assert list(extract_faults(read, LINES)) == []


@pytest.mark.parametrize(
    ("read", "fault"),
    [
        pytest.param("B-043 1 of 2", "'B-042' cannot be searched for", id="another number"),
        pytest.param("1 of 2", "'B-042' cannot be searched for", id="a line missing"),
        pytest.param("B-042 1 of 2 x", "'x' is found by a search", id="a sign too many"),
        pytest.param("B-042 B-042", "'1 of 2' cannot be searched for", id="one line twice"),
    ],
)
def test_another_text_is_told(read: str, fault: str) -> None:
    """What is extracted must be what the page says, line for line."""
    assert fault in " ".join(extract_faults(read, LINES))


def test_shaped_lines_are_passed_over() -> None:
    """A reader may turn a line from the right round; the plain lines above it still count."""
    lines = [*LINES, *lines_of([from_the_right("كل", language="ar", y_mm=30.0)])]
    assert list(extract_faults("لك 1 of 2 B-042", lines)) == []
    assert list(extract_faults("لك 1 of 2", lines))


def test_lines_beside_a_shaped_one_are_passed_over() -> None:
    """A reader takes what stands at one height for one line, and turns all of it round."""
    lines = [*LINES, *lines_of([from_the_right("كل", language="ar")])]
    assert list(extract_faults("240-B لك 2 fo 1", lines)) == []


def test_glyphs_that_say_something_else_are_caught() -> None:
    """The right letters in print that would be copied as others are told."""
    plate = plate_of(page(text("B-042")))
    (use,) = plate.fonts
    texts = tuple("3" if one == "2" else one for one in use.texts)
    told = faults_in(replace(plate, fonts=(replace(use, texts=texts),)), page(text("B-042")))
    assert "'B-042' cannot be searched for" in " ".join(told)
