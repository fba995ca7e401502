from __future__ import annotations

from dataclasses import replace

from service.render.proof.face import page_name
from tests.render.made import from_the_right, page, symbol, text
from tests.render.proof.plated import faults_of


def test_a_face_is_named() -> None:
    """Whoever reads of a fault learns which card and which of its pages it is."""
    assert page_name(replace(page(), number=2, of=3)) == "lid-card B-042, 2/3"


def test_two_of_the_same_are_told_apart() -> None:
    """The same line or symbol may stand on a face twice, each in its own place."""
    other = replace(symbol(), rect=symbol().rect.moved(-20.0, 0.0))
    whole = page(text("B-042"), text("B-042", y_mm=12.0), symbol(), other)
    assert faults_of(whole) == []


def test_faults_of_each_kind_come_together() -> None:
    """A face with several things wrong is told of all of them at once."""
    drawn = page(text("B-041"), from_the_right("كل", language="ar", y_mm=12.0))
    wanted = page(text("B-042"), symbol())
    told = faults_of(drawn, wanted)
    assert len(told) >= 4
    assert {fault.split(": ", 1)[0] for fault in told} == {"lid-card B-042, 1/1"}
