"""The shipped fonts against the scripts of the Unicode Standard and the letters of languages."""

# ruff: noqa: RUF001 (letters that look alike are what this file is about)

from __future__ import annotations

import io
import re
import subprocess
import sys
import tomllib
import unicodedata
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

import pikepdf
import pytest
from fontTools.pens.boundsPen import BoundsPen
from fontTools.pens.recordingPen import RecordingPen
from fontTools.ttLib import TTFont

if TYPE_CHECKING:
    from collections.abc import Iterator

FONTS = Path(__file__).resolve().parents[2] / "templates" / "fonts"
TABLE = tomllib.loads((FONTS / "fonts.toml").read_text(encoding="utf-8"))
FACES = {face["file"]: face for family in TABLE["family"] for face in family["face"]}
MAIN_FACES = [name for name in FACES if name.startswith("AtkinsonHyperlegibleNext")]

# A sentence a language, each written for this test; "und" is the signs a card uses.
SENTENCES = {
    "en": "A quick lift of the wax jug, brass hoop and zinc vat: very heavy! £12 – 3½ × 4°",
    "cy": "Mae’r llestr wrth ymyl y tŷ dŵr; ŷd, Ŵyl, Ŷd, sêr, tân, llŷn, ẁ ẃ ẅ ỳ ý ÿ ï ö",
    "pl": "Łódź stoi w pudełku; część źródeł, żaden ćwiek: Ą Ć Ę Ł Ń Ó Ś Ź Ż ą ć ę ł ń ó ś ź ż",
    "vi": "Mọi người đều được nhắc: chiếc hộp này rất nặng, hãy ưu tiên nhấc bằng hai tay; ữ ở ẵ",
    "el": "Όλα τα κουτιά στο ράφι είναι βαριά· προσοχή στο γυαλί, ΐ ΰ Ξ Ψ Ω",
    "ru": "Съёмный щит, юла, эхолот и жёсткий чехол лежат в ящике; ґ є ї і ў ћ ђ љ њ џ",
    "ar": "كلُّ صندوقٍ على الرفّ ثقيل، ارفعه بيديك؛ ١٢٣ پ چ گ ژ",
    "he": "כָּל אַרְגָּז עַל הַמַּדָּף כָּבֵד, הָרִימוּ בִּזְהִירוּת; ץ ף ך ם ן שׁ שׂ",
    "hi": "यह सन्दूक भारी है, इसे दोनों हाथों से उठाएँ; क्षत्रिय ज्ञान श्री १२३",
    "zh-Hans": "这只箱子很重，请用双手抬起；玻璃易碎，保持干燥。",
    "zh-Hant": "這隻箱子很重，請用雙手抬起；玻璃易碎，保持乾燥。",
    "ja": "この箱は重いので、両手で持ち上げてください。ガラス・陶器、硝子乾板「壱」剝製、𠮟",
    "ko": "이 상자는 무거우니 두 손으로 드십시오. 유리, 젖은 뷁 쀍 힣 漢字",
    "und": "→ ← ↑ ↓ ☐ ☑ ✓ ✗ ⚠ № µ ± × ÷ ≤ ≥ ½ ² ³ ° ′ ″ … – — • · € £ ♂ ♀ ★ ● ○ ▲ ■ ﬁ \u25cc",
}

# fontconfig reads its variables once, when Pango is loaded: hence a process of its own.
RENDER = """
import os, sys
os.environ["FONTCONFIG_FILE"], os.environ["XDG_CACHE_HOME"] = sys.argv[1:]
from weasyprint import HTML
HTML(string=sys.stdin.read()).write_pdf(sys.stdout.buffer)
"""


@cache
def opened(name: str) -> TTFont:
    """Open a shipped face once."""
    return TTFont(FONTS / name, lazy=True)


@cache
def characters(name: str) -> frozenset[int]:
    """List the code points that a face has a glyph for."""
    return frozenset(opened(name).getBestCmap())


def all_characters() -> frozenset[int]:
    """List the code points that any shipped face has a glyph for."""
    return frozenset[int]().union(*map(characters, FACES))


def top_ratio(font: TTFont, character: str) -> float:
    """Measure how high an outline reaches, in ems."""
    pen = BoundsPen(font.getGlyphSet())
    font.getGlyphSet()[font.getBestCmap()[ord(character)]].draw(pen)
    return float(pen.bounds[3] / font["head"].unitsPerEm)


def tabular_glyphs(font: TTFont) -> dict[str, str]:
    """Map each glyph that `tnum` replaces to its replacement."""
    gsub = font["GSUB"].table
    lookups = {
        index
        for record in gsub.FeatureList.FeatureRecord
        if record.FeatureTag == "tnum"
        for index in record.Feature.LookupListIndex
    }
    tables = [table for index in lookups for table in gsub.LookupList.Lookup[index].SubTable]
    plain = [getattr(table, "ExtSubTable", table) for table in tables]
    return {was: now for table in plain for was, now in table.mapping.items()}


@pytest.fixture(scope="module")
def printed(tmp_path_factory: pytest.TempPathFactory) -> Iterator[pikepdf.Pdf]:
    """Print every sentence, regular and bold, without asking for a family."""
    lines = [f"<p lang={tag} dir=auto>{text} <b>{text}</b>" for tag, text in SENTENCES.items()]
    settings = [str(FONTS / "fonts.conf"), str(tmp_path_factory.mktemp("cache"))]
    done = subprocess.run(
        [sys.executable, "-c", RENDER, *settings],
        input="".join(lines).encode(),
        capture_output=True,
        check=True,
    )
    with pikepdf.open(io.BytesIO(done.stdout)) as pdf:
        yield pdf


def shown_strings(page: pikepdf.Page) -> Iterator[bytes]:
    """Give the glyph ids, two bytes each, of every text operator of a page."""
    for instruction in pikepdf.parse_content_stream(page):
        operands = list(instruction.operands)
        if str(instruction.operator) in {"Tj", "TJ"}:
            parts = operands[0] if str(instruction.operator) == "TJ" else operands
            yield from (bytes(part) for part in parts if isinstance(part, pikepdf.String))


@pytest.mark.parametrize("tag", SENTENCES)
def test_every_character_has_a_glyph(tag: str) -> None:
    """Each character of a sentence in each promised language is in a shipped face."""
    assert [c for c in SENTENCES[tag] if ord(c) not in all_characters()] == []


@pytest.mark.parametrize(
    ("family", "first", "last"),
    [
        pytest.param("NotoSans", 0x0020, 0x024F, id="Latin to Latin Extended-B"),
        pytest.param("NotoSans", 0x1E00, 0x1EFF, id="Latin Extended Additional"),
        pytest.param("NotoSans", 0x0400, 0x052F, id="Cyrillic with supplement"),
        pytest.param("NotoSansArabic", 0x0600, 0x06FF, id="Arabic"),
        pytest.param("NotoSansHebrew", 0x05D0, 0x05EA, id="Hebrew letters"),
        pytest.param("NotoSansHebrew", 0x0591, 0x05C7, id="Hebrew points and accents"),
        pytest.param("NotoSansDevanagari", 0x0900, 0x097F, id="Devanagari"),
        pytest.param("NotoSansJP", 0x3041, 0x3096, id="Hiragana"),
        pytest.param("NotoSansJP", 0x30A1, 0x30FA, id="Katakana"),
        pytest.param("NotoSansKR", 0xAC00, 0xD7A3, id="Hangul syllables"),
    ],
)
def test_whole_blocks_of_the_unicode_standard(family: str, first: int, last: int) -> None:
    """The regular face holds every assigned printing character of the block."""
    wanted = [
        point for point in range(first, last + 1) if unicodedata.category(chr(point))[0] in "LMNPS"
    ]
    held = characters(f"{family}-Regular.ttf")
    assert [f"{point:04X}" for point in wanted if point not in held] == []


@pytest.mark.parametrize(
    ("encoding", "count"),
    [
        pytest.param("shift_jis", 6356, id="JIS X 0208: 6355 kanji and one sign"),
        pytest.param("gb2312", 6763, id="GB 2312"),
        pytest.param("euc_kr", 4888, id="KS X 1001"),
    ],
)
def test_ideographs_of_the_national_sets(encoding: str, count: int) -> None:
    """Every ideograph of the national standard, as many as that counts, is in a shipped face."""
    ideographs = [*range(0x4E00, 0xA000), *range(0xF900, 0xFB00)]
    wanted = [point for point in ideographs if chr(point).encode(encoding, "ignore")]
    assert len(wanted) == count
    assert all_characters().issuperset(wanted)


@pytest.mark.parametrize("name", MAIN_FACES)
def test_welsh_and_polish_are_set_in_the_main_face(name: str) -> None:
    """Welsh and Polish need no second face, so that their words keep one look."""
    words = SENTENCES["cy"] + SENTENCES["pl"]
    assert [c for c in words if ord(c) not in characters(name)] == []


@pytest.mark.parametrize("name", MAIN_FACES)
def test_tabular_figures_are_equally_wide(name: str) -> None:
    """With `tnum` on, as OpenType registers it, all ten figures advance by one width."""
    font = opened(name)
    swapped = tabular_glyphs(font)
    plain = [font.getBestCmap()[ord(figure)] for figure in "0123456789"]
    assert len({font["hmtx"][swapped.get(glyph, glyph)][0] for glyph in plain}) == 1


@pytest.mark.parametrize("name", MAIN_FACES)
def test_alike_characters_have_unlike_outlines(name: str) -> None:
    """Zero, O, one, l and I are five different outlines."""
    glyphs = opened(name).getGlyphSet()
    outlines = set()
    for character in "0O1lI":
        pen = RecordingPen()
        glyphs[opened(name).getBestCmap()[ord(character)]].draw(pen)
        outlines.add(repr(pen.value))
    assert len(outlines) == 5


@pytest.mark.parametrize("name", FACES)
def test_the_table_tells_the_measured_heights(name: str) -> None:
    """Type sizes are computed from these ratios: they match the outlines of H and x."""
    face = FACES[name]
    assert top_ratio(opened(name), "H") == pytest.approx(face["cap_height_ratio"], abs=0.0005)
    assert top_ratio(opened(name), "x") == pytest.approx(face["x_height_ratio"], abs=0.0005)
    assert opened(name)["OS/2"].usWeightClass == face["weight"]


def test_the_table_lists_every_font_and_licence() -> None:
    """The table and the folder name the same fonts, and each family has its licence."""
    assert {path.name for path in FONTS.glob("*.ttf")} == set(FACES)
    licences = [FONTS / family["licence_file"] for family in TABLE["family"]]
    assert all("SIL OPEN FONT LICENSE" in path.read_text(encoding="utf-8") for path in licences)


def test_fontconfig_keeps_the_order_of_the_table() -> None:
    """The last rule of fonts.conf names every family in the table's order of fallback."""
    rule = (FONTS / "fonts.conf").read_text(encoding="utf-8").rpartition("<edit")[2]
    assert re.findall("<string>(.+)</string>", rule) == [
        family["name"] for family in TABLE["family"]
    ]


@pytest.mark.parametrize("name", MAIN_FACES)
def test_no_greek_letter_is_left_to_the_main_face(name: str) -> None:
    """Each letter it holds of the Greek blocks (Unicode) is taken away, and is in Noto Sans."""
    rule = (FONTS / "fonts.conf").read_text(encoding="utf-8").partition('target="scan"')[2]
    taken = {int(point, 16) for point in re.findall("<int>0x(.+?)</int>", rule)}
    greek = {*range(0x0370, 0x0400), *range(0x1F00, 0x2000)}
    assert characters(name) & greek == taken
    assert taken <= characters("NotoSans-Regular.ttf") & characters("NotoSans-Bold.ttf")


@pytest.mark.print
@pytest.mark.slow
def test_printing_uses_the_shipped_fonts_alone(printed: pikepdf.Pdf) -> None:
    """A page with every script, no family asked for, embeds our families and every one of them."""
    used = {str(font.BaseFont) for page in printed.pages for font in page.Resources.Font.values()}
    plain = {re.sub("-Bold$", "", name.partition("+")[2].rstrip(",")) for name in used}
    assert plain == {family["name"].replace(" ", "-") for family in TABLE["family"]}


@pytest.mark.print
@pytest.mark.slow
def test_printing_shows_no_empty_box(printed: pikepdf.Pdf) -> None:
    """No glyph 0, which is the empty box of every font, is shown on the page."""
    shown = [text for page in printed.pages for text in shown_strings(page)]
    pairs = [text[at : at + 2] for text in shown for at in range(0, len(text), 2)]
    assert pairs
    assert b"\0\0" not in pairs
