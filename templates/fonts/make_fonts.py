"""Make the shipped fonts anew from the unpacked source packages (see README.md).

    python make_fonts.py SOURCES

SOURCES is a folder that holds one unpacked package a family, each named as in `FACES`. Whole faces
are copied byte for byte; the three big CJK faces are cut down to their national character sets.
"""

from __future__ import annotations

import shutil
import sys
from dataclasses import dataclass
from pathlib import Path

from fontTools import subset

HERE = Path(__file__).resolve().parent

# Joyo kanji of 2010 that JIS X 0208 writes otherwise, and two hanja that the Korean source lacks.
ADDED_TO_JAPANESE = "塡剝頰𠮟\uf95f\uf9aa"
# Big5 level 1 (the common traditional characters) lies in these lead bytes.
BIG5_LEVEL_1_LEADS = range(0xA4, 0xC7)
KEPT_FEATURES = ["ccmp", "halt", "kern", "liga", "mark", "mkmk", "palt"]
# Cards are set in horizontal lines only.
VERTICAL_TABLES = ["BASE", "VORG", "vhea", "vmtx"]


@dataclass(frozen=True, slots=True)
class Face:
    """One source package and what is taken from it."""

    package: str
    source_stem: str
    styles: tuple[str, ...]
    encodings: tuple[str, ...] = ()


FACES = (
    Face(
        "atkinson-hyperlegible-next",
        "AtkinsonHyperlegibleNext",
        ("400Regular", "600SemiBold", "700Bold", "800ExtraBold"),
    ),
    Face("noto-sans", "NotoSans", ("400Regular", "700Bold")),
    Face("noto-sans-arabic", "NotoSansArabic", ("400Regular", "700Bold")),
    Face("noto-sans-hebrew", "NotoSansHebrew", ("400Regular", "700Bold")),
    Face("noto-sans-devanagari", "NotoSansDevanagari", ("400Regular", "700Bold")),
    Face("noto-sans-jp", "NotoSansJP", ("400Regular",), ("shift_jis_2004",)),
    Face("noto-sans-sc", "NotoSansSC", ("400Regular",), ("gb2312", "big5")),
    Face("noto-sans-kr", "NotoSansKR", ("400Regular",), ("euc_kr",)),
    Face("noto-sans-symbols", "NotoSansSymbols", ("400Regular", "700Bold")),
    Face("noto-sans-symbols-2", "NotoSansSymbols2", ("400Regular",)),
)


def characters_of(encoding: str) -> set[int]:
    """List the code points that a national character set holds."""
    held = {ord(character) for character in ADDED_TO_JAPANESE if "jis" in encoding}
    for code_point in range(0x20, 0x30000):
        try:
            encoded = chr(code_point).encode(encoding)
        except UnicodeEncodeError:
            continue
        if encoding != "big5" or encoded[0] in BIG5_LEVEL_1_LEADS:
            held.add(code_point)
    return held


def cut_down(source: Path, target: Path, encodings: tuple[str, ...]) -> None:
    """Write a face that keeps only the characters of these encodings, and its full name table."""
    options = subset.Options(layout_features=KEPT_FEATURES, name_IDs=["*"], name_languages=["*"])
    options.drop_tables += VERTICAL_TABLES
    font = subset.load_font(source, options)
    subsetter = subset.Subsetter(options)
    subsetter.populate(unicodes=set().union(*map(characters_of, encodings)))
    subsetter.subset(font)
    font.save(target)


def make_face(sources: Path, face: Face) -> None:
    """Copy or cut down each style of one face and bring its licence along."""
    package = sources / face.package
    for style in face.styles:
        source = package / style / f"{face.source_stem}_{style}.ttf"
        target = HERE / f"{face.source_stem}-{style[3:]}.ttf"
        if face.encodings:
            cut_down(source, target, face.encodings)
        else:
            shutil.copyfile(source, target)
    shutil.copyfile(package / "LICENSE_FONT", HERE / f"OFL-{face.source_stem}.txt")


def main() -> None:
    """Make every face from the folder named on the command line."""
    for face in FACES:
        make_face(Path(sys.argv[1]), face)


if __name__ == "__main__":
    main()
