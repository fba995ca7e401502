from __future__ import annotations

import pytest

from service.render.reading.fonts import shipped_fonts
from service.render.task import FONTS_CONF
from service.render.typeset.faces import Face
from service.render.typeset.operators import say_instead, show_runs
from service.render.typeset.shaped import EMPTY_GLYPH, Run

FILES = tuple(shipped_fonts(FONTS_CONF.parent).values())
FACE, OTHER = Face(0, FILES[0]), Face(6, FILES[6])
SIZE_PT = 7.5
EM = 10 * 1024
"""7.5 points are 10 CSS pixels."""


def run(*glyphs: tuple[int, float], x: float = 0.0, y: float = 0.0) -> Run:
    """Make a run of glyphs, each so much wider than its font says, in thousandths of the em."""
    numbers = [number for number, _ in glyphs]
    widths = [
        round((extra + (FACE.codes[number][0] if number < EMPTY_GLYPH else 0)) * EM / 1000)
        for number, extra in glyphs
    ]
    count = len(numbers)
    x_offsets, y_offsets = [round(x * EM / 1000)] * count, [round(y * EM / 1000)] * count
    return Run(None, 0, count, False, numbers, widths, x_offsets, y_offsets, list(range(count)))  # noqa: FBT003 - a plain tuple


@pytest.mark.parametrize(
    ("shown", "operators"),
    [
        ([run((17, 0), (18, 0))], "[<00110012>] TJ"),
        ([run((17, -20), (18, 0))], "[<0011>20<0012>] TJ"),
        ([run((17, 20), (18, 0))], "[<0011>-20<0012>] TJ"),
        ([run((17, 0)), run((18, 0))], "[<00110012>] TJ"),
        ([run((17, 0), x=50)], "[-50<0011>] TJ"),
        ([run((17, 0), (EMPTY_GLYPH, 30), (18, 0))], "[<0011>-30<0012>] TJ"),
        ([run((EMPTY_GLYPH, 30))], ""),
        ([run((EMPTY_GLYPH + 1, 0))], "[<0000>] TJ"),
        (
            [run((17, 0)), run((18, 0), y=-100), run((19, 0))],
            "[<0011>] TJ 0.750 Ts [<0012>] TJ 0 Ts [<0013>] TJ",
        ),
    ],
    ids=["plain", "closer", "wider", "joined", "offset", "gap", "nothing", "missing", "raised"],
)
def test_glyphs_are_written_where_the_shaper_sets_them(shown: list[Run], operators: str) -> None:
    """A shift moves left when it is positive, and a rise up (ISO 32000-1, 9.3.7 and 9.4.3)."""
    written = show_runs([(FACE, one) for one in shown], SIZE_PT)
    assert written == f"/F0 7.5 Tf {operators}".rstrip()


def test_a_font_is_named_where_it_changes() -> None:
    """Each change of font closes what was being shown."""
    runs = [(FACE, run((17, 0))), (FACE, run((18, 0))), (OTHER, run((19, 0)))]
    shown = show_runs(runs, 10.0)
    assert shown.split(" Tf ")[0] == "/F0 10"
    assert shown.count(" Tf ") == 2
    assert shown.index("/F6 10 Tf") > shown.index("0012")


def test_small_differences_add_up_to_a_shift() -> None:
    """What is too little for one shift is not lost: the last glyph is where the shaper sets it."""
    glyphs = run(*[(17, 0.1)] * 100, (18, 0))
    shown = show_runs([(FACE, glyphs)], SIZE_PT)
    shifts = [int(part.split("<")[0]) for part in shown.split(">")[1:-1]]
    wanted = sum(glyphs.widths[:-1]) / EM * 1000 - 100 * FACE.codes[17][0]
    assert wanted > 5
    assert -sum(shifts) == pytest.approx(wanted, abs=0.5)
    assert len(shifts) < 20


def test_what_is_said_stands_around_what_is_shown() -> None:
    """Text for a reader is UTF-16 with a byte order mark (ISO 32000-1, 7.9.2.2 and 14.9.4)."""
    said = say_instead("[<0011>] TJ", "a\U00012000")
    assert said == "/Span <</ActualText<FEFF0061D808DC00>>> BDC [<0011>] TJ EMC"
