from __future__ import annotations

import csv
import unicodedata
from collections.abc import Iterator
from pathlib import Path

import pytest

from service.geometry import Rect, Size
from service.pages.page import Direction, Page, TextBlock, TextStyle
from service.pages.setting.script import language_of
from service.render.draw import draw_pages
from service.render.reading.fonts import shipped_fonts
from service.render.reading.glyphs import Glyph, RunReader
from service.render.reading.shaping import Shaper
from service.render.ruler import PangoRuler
from service.render.task import ENVIRONMENT, FONTS_CONF, DrawTask
from service.render.typeset.line import SetLine
from service.render.typeset.setter import Typesetter
from service.render.worker import Workers
from service.units import mm_from_points
from tests.render.typeset.engine import Inked, inked_lines

SAMPLES = Path(__file__).parents[3] / "sample_records"
SHIPPED = shipped_fonts(FONTS_CONF.parent)
SHAPER = Shaper(SHIPPED)
READER = RunReader(list(SHIPPED), SHAPER)
MORE = (
    "office fluffy waffle",
    "(עברית) 12-34 (abc)",
    "12:30 — 3½ \N{MULTIPLICATION SIGN} 4⅜ in.",
    "a\N{NO-BREAK SPACE}b\N{ZERO WIDTH SPACE}c",
    "x\N{COMBINING ACUTE ACCENT} q\N{COMBINING DOT BELOW}",
    "Δίσκος, Ωμέγα, μπλε πήλινο B-044",
    "5 \N{GREEK SMALL LETTER MU}m, 5 \N{MICRO SIGN}m, 5 \N{OHM SIGN}",
)
STYLES = (TextStyle(6.5), TextStyle(11.25, weight=700), TextStyle(24.0, weight=800))
LEFT_MM, WIDTH_MM, PITCH_MM = 5.0, 200.0, 12.0
ENGINE_ROUNDING_RATIO = 0.001
"""The engine cuts each shift to a whole thousandth of the em, so that its lines drift."""
ENGINE_OFFSETS_RATIO = 0.025
"""The engine counts 1000 instead of 1024 units to the pixel where it moves a mark."""
FROM_THE_RIGHT = {"ar", "he"}


def texts_in(*files: Path) -> tuple[str, ...]:
    """Give every text of some tables, each once."""
    cells: list[str] = []
    for file in files:
        with file.open(encoding="utf-8-sig", newline="") as opened:
            cells += [" ".join(cell.split()) for row in csv.reader(opened) for cell in row]
    return tuple(dict.fromkeys(filter(None, cells)))


SCRIPTS = (*texts_in(SAMPLES / "scripts.csv"), *MORE)
DEMO = texts_in(*sorted((SAMPLES / "port_merrow").glob("*.csv")))


def block(text: str, number: int, style: TextStyle, setter: Typesetter) -> TextBlock:
    """Make a block of one line as a page has it."""
    leftward = setter.paragraphs.is_right_to_left(text.encode())
    direction = Direction.RIGHT_TO_LEFT if leftward else Direction.LEFT_TO_RIGHT
    rect = Rect(LEFT_MM, 5.0 + number * PITCH_MM, WIDTH_MM, style.leading_mm)
    return TextBlock("title", rect, (text,), style, text, direction, language_of(text))


def set_block(made: TextBlock, setter: Typesetter) -> SetLine:
    """Set the line of a block."""
    return setter.set_line(
        made.lines[0],
        size_pt=made.style.size_pt,
        weight=made.style.weight,
        language=made.language,
        is_right_to_left=made.direction is Direction.RIGHT_TO_LEFT,
    )


def set_plain(text: str, setter: Typesetter, *, size_pt: float = 10.0) -> SetLine:
    """Set a line from left to right in no language."""
    return setter.set_line(text, size_pt=size_pt, weight=400, language="", is_right_to_left=False)


def origin_mm(made: TextBlock, line: SetLine, setter: Typesetter) -> tuple[float, float]:
    """Give where CSS has a line begin: its left edge, and its baseline (CSS 2.1, 10.8)."""
    style = made.style
    height_mm, baseline_mm = setter.strut(
        size_pt=style.size_pt, weight=style.weight, language=made.language
    )
    pitch_mm = style.leading_mm
    strut_mm = baseline_mm + (pitch_mm - height_mm) / 2
    own_mm = (pitch_mm + line.ascent_mm - line.descent_mm) / 2
    leftward = made.direction is Direction.RIGHT_TO_LEFT
    left_mm = LEFT_MM + WIDTH_MM - line.width_mm if leftward else LEFT_MM
    return left_mm, made.rect.y_mm + max(strut_mm, own_mm)


def assert_alike(made: TextBlock, inked: list[Inked], setter: Typesetter) -> None:
    """Compare a line with the engine's, glyph by glyph."""
    line = set_block(made, setter)
    read = READER.read(line.operators)
    assert read.unread == ""
    ours = read.glyphs
    assert [(one.font, one.number) for one in ours] == [(one.font, one.number) for one in inked]
    left_mm, baseline_mm = origin_mm(made, line, setter)
    em_mm = mm_from_points(made.style.size_pt)
    offset_mm = ENGINE_OFFSETS_RATIO * em_mm if has_marks(made.lines[0], ours) else 0.0
    for number, (our, their) in enumerate(zip(ours, inked, strict=True)):
        allowed_mm = 0.01 + ENGINE_ROUNDING_RATIO * em_mm * number + offset_mm
        assert left_mm + our.origin.x_mm == pytest.approx(their.x_mm, abs=allowed_mm)
        allowed_mm = 0.001 + ENGINE_OFFSETS_RATIO * abs(our.origin.y_mm)
        assert baseline_mm + our.origin.y_mm == pytest.approx(their.y_mm, abs=allowed_mm)


def has_marks(text: str, glyphs: tuple[Glyph, ...]) -> bool:
    """Tell whether marks or dots are set by themselves."""
    return any(map(unicodedata.combining, text)) or any(glyph.origin.y_mm for glyph in glyphs)


@pytest.fixture(scope="module")
def workers() -> Iterator[Workers]:
    """Start a child that draws, and end it."""
    with Workers(1, environment=ENVIRONMENT, tasks_per_process=200) as started:
        yield started


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.parametrize("style", STYLES, ids=lambda style: f"{style.size_pt} pt")
def test_lines_are_those_of_the_layout_engine(
    style: TextStyle, workers: Workers, setter: Typesetter
) -> None:
    """Every text of the samples has the engine's fonts, glyphs and places, but for its rounding."""
    texts = SCRIPTS + DEMO[STYLES.index(style) :: len(STYLES)]
    blocks = [block(text, number, style, setter) for number, text in enumerate(texts)]
    size = Size(2 * LEFT_MM + WIDTH_MM, 10.0 + PITCH_MM * len(texts))
    page = Page("lid-card", "B-042", "Brass", 1, 1, size, tuple(blocks))
    (pdf,) = workers.run(draw_pages, [DrawTask((page,), {})])
    assert isinstance(pdf, bytes)
    for made, inked in zip(blocks, inked_lines(pdf), strict=True):
        assert_alike(made, inked, setter)


@pytest.mark.parametrize(
    ("text", "font", "language"),
    [
        ("Brass buckle, AV Wafer Tool 1905", "Atkinson-Hyperlegible-Next", ""),
        ("Судовой компас в латунном корпусе", "Noto-Sans", ""),
        ("بوصلة سفينة في صندوق نحاسي", "Noto-Sans-Arabic", "ar"),
        ("מַצְפֵּן שֶׁל סְפִינָה בְּקֻפְסַת פְּלִיז", "Noto-Sans-Hebrew", "he"),
        ("पीतल के डिब्बे में जहाज़ का कुतुबनुमा", "Noto-Sans-Devanagari", "hi"),
        ("真鍮の箱に入った船用コンパス", "Noto-Sans-JP", "ja"),
    ],
    ids=["latin", "cyrillic", "arabic", "hebrew", "devanagari", "japanese"],
)
@pytest.mark.parametrize("size_pt", [6.5, 11.25, 40.0])
def test_places_are_those_of_another_shaper(
    text: str, font: str, language: str, size_pt: float, setter: Typesetter
) -> None:
    """HarfBuzz by itself sets each glyph within 0.01 mm, at the end of a line as at its start."""
    line = setter.set_line(
        text,
        size_pt=size_pt,
        weight=400,
        language=language,
        is_right_to_left=language in FROM_THE_RIGHT,
    )
    wanted = SHAPER.shape_line(font, text, language=language)
    glyphs = READER.read(line.operators).glyphs
    assert {glyph.font for glyph in glyphs} == {font}
    assert tuple(glyph.number for glyph in glyphs) == wanted.numbers
    em_mm = mm_from_points(size_pt)
    for glyph, start_ratio in zip(glyphs, wanted.starts_ratio, strict=True):
        assert glyph.origin.x_mm == pytest.approx(start_ratio * em_mm, abs=0.01)


@pytest.mark.parametrize("language", ["", "el"])
@pytest.mark.parametrize("weight", [400, 600, 700, 800])
@pytest.mark.parametrize("word", ["Δίσκος", "Ωμέγα", "μπλε", "πήλινο", "Κουτί"])
def test_a_greek_word_is_set_in_one_face(
    word: str, weight: int, language: str, setter: Typesetter
) -> None:
    """The main face holds four of its letters, and none of them is taken from there."""
    line = setter.set_line(
        word, size_pt=10.0, weight=weight, language=language, is_right_to_left=False
    )
    face = "Noto-Sans" if weight == 400 else "Noto-Sans-Bold"
    assert [list(SHIPPED)[number] for number in line.glyphs] == [face]


def test_the_ruler_measures_what_is_set(setter: Typesetter) -> None:
    """One set of fonts serves both, and neither disturbs the other."""
    ruler = PangoRuler(FONTS_CONF, setter)
    for text in SCRIPTS:
        made = block(text, 0, TextStyle(12.0, language=language_of(text)), setter)
        width_mm = ruler.width_mm(text, made.style)
        assert set_block(made, setter).width_mm == pytest.approx(width_mm, abs=0.001)


def test_every_glyph_shown_has_its_text(setter: Typesetter) -> None:
    """What is drawn is what the map of glyphs holds, font by font."""
    for number, text in enumerate(SCRIPTS):
        line = set_block(block(text, number, TextStyle(10.0), setter), setter)
        shown: dict[int, set[int]] = {}
        for glyph in READER.read(line.operators).glyphs:
            shown.setdefault(list(SHIPPED).index(glyph.font), set()).add(glyph.number)
        assert shown == {font: set(glyphs) for font, glyphs in line.glyphs.items()}


def test_text_from_the_right_is_said_as_it_reads(setter: Typesetter) -> None:
    """A reader is told the whole line in its own order; plain text needs no telling."""
    text = "كأس 12"
    line = setter.set_line(text, size_pt=10, weight=400, language="ar", is_right_to_left=True)
    assert READER.read(line.operators).said == text
    assert READER.read(set_plain("Brass office", setter).operators).said is None


def test_no_string_is_empty(setter: Typesetter) -> None:
    """PDFium loses the shift behind an empty string, and with it its place."""
    for text in SCRIPTS + DEMO:
        line = set_block(block(text, 0, TextStyle(10.0), setter), setter)
        assert b"<>" not in line.operators.replace(b"/Span <<", b"")


def test_what_no_font_holds_is_glyph_nought(setter: Typesetter) -> None:
    """Nothing is raised; the glyph for a missing character says it on the face."""
    glyphs = READER.read(set_plain("a\U00012000b", setter).operators).glyphs
    assert [glyph.number == 0 for glyph in glyphs] == [False, True, False]


def test_an_empty_line_shows_nothing(setter: Typesetter) -> None:
    """It is as high as another, so that it can stand among others."""
    line = set_plain("", setter)
    assert (line.operators, line.width_mm, line.glyphs) == (b"", 0.0, {})
    height_mm, baseline_mm = setter.strut(size_pt=10, weight=400, language="")
    assert (line.ascent_mm + line.descent_mm, line.ascent_mm) == (height_mm, baseline_mm)


def test_lines_are_remembered(setter: Typesetter) -> None:
    """The same line is set once."""
    assert set_plain("Brass", setter) is set_plain("Brass", setter)
    assert set_plain("Brass", setter) is not set_plain("Brass", setter, size_pt=11)


@pytest.mark.slow
def test_memory_is_bounded() -> None:
    """After the first 20,000 lines in some thousand sizes, 30,000 more take next to nothing."""
    setter = Typesetter(FONTS_CONF)

    def set_many(first: int, last: int) -> float:
        for number in range(first, last):
            set_plain(f"Brass buckle {number}", setter, size_pt=6 + number // 20 % 1500 / 100)
        return resident_mb()

    settled_mb = set_many(0, 20_000)
    assert set_many(20_000, 50_000) - settled_mb < 20


def resident_mb() -> float:
    """Read the resident memory of this process."""
    status = Path("/proc/self/status").read_text(encoding="ascii")
    return int(status.split("VmRSS:")[1].split()[0]) / 1024
