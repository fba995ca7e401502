from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.papers.isolation_label import IsolationLabel, label_incoming
from service.geometry import Size
from service.legibility import cap_height_mm
from service.pages.rounds.isolation import AISLE_DISTANCE_MM, fit_isolation_label
from service.pages.setting.type import caps_mm
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from tests.cards.papers.made import ISOLATION, JAR, LEAD, SHOWN, label_of
from tests.pages.checks import collisions, said, strays, texts
from tests.pages.rounds.test_slip import HEAVY

A5, HALF, NARROW = Size(210.0, 148.5), Size(215.9, 139.7), Size(105.0, 210.0)
RULER = PangoRuler(FONTS_CONF)
LONG = replace(
    label_of(LEAD),
    number="PMM.STORE/2019-OVERFLOW.0001-REHOUSED-ANNEXE-B",
    title="Regatta-day dress of striped cotton, with sash and straw hat and more " * 5,
    why="Larvae in the felt of the lid, frass in two corners, a moth on the trap above " * 4,
)


@pytest.mark.parametrize("size", [A5, HALF], ids=["A5", "half"])
@pytest.mark.parametrize(
    "label",
    [label_of(LEAD), label_of(JAR), LONG, label_incoming("E2561.1", ISOLATION, SHOWN)],
    ids=["lead", "jar", "long", "incoming"],
)
def test_a_label_is_composed(label: IsolationLabel, size: Size) -> None:
    """Nothing meets or leaves the label, and its number is whole."""
    (page,) = fit_isolation_label(label, size, RULER)
    assert collisions(page, RULER) == []
    assert strays(page, RULER, margin_mm=4.3) == []
    assert said([page], "number") == [label.number]


def test_the_word_is_read_from_the_aisle() -> None:
    """At three metres it fills twenty minutes of arc; a small label has it as wide as it is."""
    (word,) = texts(fit_isolation_label(label_of(LEAD), A5, RULER), "heading")
    assert caps_mm(word.style.size_pt) == pytest.approx(cap_height_mm(AISLE_DISTANCE_MM))
    (small,) = texts(fit_isolation_label(label_of(JAR), NARROW, RULER), "heading")
    assert 0.9 * small.rect.width_mm < RULER.width_mm("ISOLATED", small.style)
    assert RULER.width_mm("ISOLATED", small.style) < small.rect.width_mm


def test_silence_is_said() -> None:
    """Nothing recorded is no promise, and of what has just come in nothing is known."""
    assert said(fit_isolation_label(label_of(JAR), A5, RULER), "silent") == [
        "No hazard is recorded; that does not mean there is none."
    ]
    new = label_incoming("E2561.1", ISOLATION, SHOWN)
    assert said(fit_isolation_label(new, A5, RULER), "silent") == [
        "Nothing is recorded of it: treat its hazards as not checked."
    ]


def test_hazards_that_have_no_room_go_on() -> None:
    """Eight of them take two labels at most, which say so; none is lost."""
    pages = fit_isolation_label(label_of(HEAVY), A5, RULER)
    assert said(pages, "hazard") == [warn.heading for warn in label_of(HEAVY).handling.hazards]
    assert said(pages, "count") == [f"label {n} of {len(pages)}" for n in range(1, len(pages) + 1)]
    assert len(pages) > 1
    assert [page for page in pages if collisions(page, RULER)] == []
