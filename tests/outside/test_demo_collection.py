"""The printed demo against its own records, read by csv and tomllib of the standard library.

The files are opened by PDFium and their symbols decoded by zxing-cpp; addresses are computed with
`urllib.parse.quote` (RFC 3986). No reader, arrangement or geometry of ours takes part in what is
expected.
"""

from __future__ import annotations

import csv
import re
import tomllib
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from urllib.parse import quote

import pypdfium2
import pytest
import zxingcpp
from PIL import Image

from service.pipeline.options import Outcome, PrintOptions
from service.pipeline.read import open_source, read_source
from service.pipeline.run import print_collection
from service.wiring import open_workshop

# Printing forty objects takes longer than one test may on a busy machine.
pytestmark = [pytest.mark.slow, pytest.mark.print, pytest.mark.timeout(600)]

DEMO = Path(__file__).parents[2] / "sample_records" / "port_merrow"
# Columns and rows of each stock, and the height of a row in mm; the block stands mid-page.
GRIDS = {
    "A4 card": (1, 1, 297.0),
    "A4 card 2xA5": (1, 2, 148.5),
    "A4 card 4xA6": (2, 2, 148.5),
    "A4 2x4 99.1x67.7": (2, 4, 67.7),
}
OUTSIDE = ("lid-card", "end-label", "cover-card")
DISCREET = {"ammunition", "firearm", "controlled-drug", "human-remains", "restricted"}
SCAN_DPI = 300
POINTS_PER_INCH = 72  # ISO 32000-1, 8.3.2.3.
MM_PER_INCH = 25.4  # By definition; the check does not borrow it from the code it checks.

Rows = list[dict[str, str]]


def rows(name: str) -> Rows:
    """Read a table of the demo."""
    with (DEMO / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


OBJECTS = {row["object_number"]: row for row in rows("objects.csv")}
CONTAINERS = {row["container_number"]: row for row in rows("containers.csv")}
PACKINGS = rows("packings.csv")
REVISIONS = {row["container_number"]: row["revision"] for row in PACKINGS}
ADDRESS = tomllib.loads((DEMO / "museum.toml").read_text(encoding="utf-8"))["container_address"]


def contents_of(container: str) -> set[str]:
    """Name the objects in a container and in those that lie in it."""
    inner = {number for number, row in CONTAINERS.items() if row["inside"] == container}
    own = {row["object_number"] for row in PACKINGS if row["container_number"] == container}
    return own.union(*map(contents_of, inner))


def containers_with(kind: str) -> set[str]:
    """Name the containers that get a kind of card, by the rule that README gives."""
    by_form = {
        number: (row["kind"], row["kind"] == "box" and row["lid"] == "opaque")
        for number, row in CONTAINERS.items()
    }
    gets = {
        "lid-card": {n for n, (form, opaque) in by_form.items() if opaque or form == "folder"},
        "end-label": {n for n, (form, _) in by_form.items() if form in {"box", "tube", "drawer"}},
        "cover-card": {n for n, (form, _) in by_form.items() if form == "garment cover"},
        "contents-list": {n for n, (form, _) in by_form.items() if form != "folder"},
    }
    return gets[kind]


def address_of(container: str) -> str:
    """Fill the museum's pattern."""
    return str(ADDRESS).replace("{container_number}", quote(container, safe=""))


def long_words(texts: Iterable[str]) -> set[str]:
    """Give the words of six letters or more."""
    return set(re.findall(r"[A-Za-z]{6,}", " ".join(texts)))


@dataclass(slots=True)
class Face:
    """What stands on one position of a sheet: numbers with their height, and QR texts."""

    text: str = ""
    containers: dict[str, float] = field(default_factory=dict)
    objects: set[str] = field(default_factory=set)
    symbols: list[str] = field(default_factory=list)

    @property
    def container(self) -> str:
        """The container whose number is printed largest."""
        return max(self.containers, key=lambda number: self.containers[number])


@dataclass(frozen=True, slots=True)
class Hit:
    """A number found on a page: where it begins, in points from the bottom left, and how tall."""

    number: str
    index: int
    centre: tuple[float, float]
    height_pt: float


def find_numbers(page: pypdfium2.PdfPage, numbers: Sequence[str]) -> Iterator[Hit]:
    """Find numbers in the text of a page; a number inside a longer one does not count."""
    text = page.get_textpage()
    taken: set[int] = set()
    for number in sorted(numbers, key=len, reverse=True):
        search = text.search(number, match_case=True)
        while (found := search.get_next()) is not None:
            index, length = found
            if index not in taken:
                taken.update(range(index, index + length))
                left, bottom, right, top = text.get_charbox(index, loose=True)
                centre = ((left + right) / 2, (bottom + top) / 2)
                yield Hit(number, index, centre, max(right - left, top - bottom))


def read_faces(pdf: bytes, stock: str) -> list[Face]:
    """Read every used position of a file."""
    document = pypdfium2.PdfDocument(pdf)
    faces: list[Face] = []
    for page in document:
        on_sheet: dict[tuple[int, int], Face] = {}
        _read_text(page, stock, on_sheet)
        _read_symbols(page, stock, on_sheet)
        faces += on_sheet.values()
    return faces


def _cell(page: pypdfium2.PdfPage, stock: str, x_pt: float, up_pt: float) -> tuple[int, int]:
    columns, lines, row_mm = GRIDS[stock]
    width_pt, height_pt = page.get_size()
    row_pt = row_mm / MM_PER_INCH * POINTS_PER_INCH
    top_pt = (height_pt - lines * row_pt) / 2
    return int(x_pt / width_pt * columns), int((height_pt - up_pt - top_pt) / row_pt)


def _read_text(page: pypdfium2.PdfPage, stock: str, on_sheet: dict[tuple[int, int], Face]) -> None:
    for hit in find_numbers(page, [*OBJECTS, *CONTAINERS]):
        face = on_sheet.setdefault(_cell(page, stock, *hit.centre), Face())
        face.text = page.get_textpage().get_text_range()
        if hit.number in OBJECTS:
            face.objects.add(hit.number)
        else:
            tallest_pt = max(hit.height_pt, face.containers.get(hit.number, 0.0))
            face.containers[hit.number] = tallest_pt


def _read_symbols(
    page: pypdfium2.PdfPage, stock: str, on_sheet: dict[tuple[int, int], Face]
) -> None:
    scale = SCAN_DPI / POINTS_PER_INCH
    scan: Image.Image = page.render(scale=scale, grayscale=True).to_pil()
    _, height_pt = page.get_size()
    for found in zxingcpp.read_barcodes(scan):
        corner = found.position.top_left
        cell = _cell(page, stock, corner.x / scale, height_pt - corner.y / scale)
        on_sheet.setdefault(cell, Face()).symbols.append(found.text)


@pytest.fixture(scope="session")
def outcome(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Outcome]:
    """Print the demo once, on whatever stocks its measures ask for; a failed proof raises."""
    source = open_source(DEMO)
    with open_workshop(tmp_path_factory.mktemp("demo")) as workshop:
        collection = read_source(source.files, workshop.workers)
        yield print_collection(collection, source.photos, PrintOptions(), workshop)


@pytest.fixture(scope="session")
def faces(outcome: Outcome) -> dict[str, list[Face]]:
    """Read all faces of each kind of card."""
    read: dict[str, list[Face]] = {}
    for file in outcome.files:
        read.setdefault(file.kind.code, []).extend(read_faces(file.pdf, file.stock.name))
    return read


@pytest.mark.parametrize("kind", ["lid-card", "cover-card", "contents-list"])
def test_every_object_stands_where_it_is_packed(faces: dict[str, list[Face]], kind: str) -> None:
    """Each card names all objects of its container, those of containers inside it, and no other."""
    printed: dict[str, set[str]] = {}
    for face in faces[kind]:
        printed.setdefault(face.container, set()).update(face.objects)
    assert printed == {number: contents_of(number) for number in containers_with(kind)}


def test_every_container_gets_its_end_labels(faces: dict[str, list[Face]]) -> None:
    """A box or tube has a label for each end, a drawer one, and nothing else has any."""
    printed = [face.container for face in faces["end-label"]]
    both_ends = {n for n in CONTAINERS if CONTAINERS[n]["kind"] in {"box", "tube"}}
    assert {number: printed.count(number) for number in printed} == {
        number: 2 if number in both_ends else 1 for number in containers_with("end-label")
    }


@pytest.mark.parametrize("kind", [*OUTSIDE, "contents-list"])
def test_symbols_lead_to_their_container(faces: dict[str, list[Face]], kind: str) -> None:
    """Every QR symbol says the address of the container on whose card it stands."""
    query = "" if kind == "end-label" else r"\?r=REVISION&k=[A-Z]{4}"
    for face in faces[kind]:
        wanted = re.escape(address_of(face.container)) + query.replace(
            "REVISION", REVISIONS[face.container]
        )
        assert [text for text in face.symbols if not re.fullmatch(wanted, text)] == []
    assert {face.container for face in faces[kind] if face.symbols} == containers_with(kind)


@pytest.mark.parametrize("kind", ["lid-card", "cover-card", "contents-list"])
def test_check_letters_can_be_read_without_a_telephone(
    faces: dict[str, list[Face]], kind: str
) -> None:
    """The revision and letters in a symbol's address stand on the card in print as well."""
    for face in faces[kind]:
        for text in face.symbols:
            revision, letters = re.findall(r"[rk]=(\w+)", text)
            assert f"r{revision} {letters}" in face.text


@pytest.mark.parametrize("kind", OUTSIDE)
def test_discreet_titles_stay_inside(outcome: Outcome, kind: str) -> None:
    """No card for the outside names what is restricted or must not be announced."""
    told = {
        row["title"]
        for row in OBJECTS.values()
        if row["restricted"] == "yes" or any(code in row["hazards"] for code in DISCREET)
    }
    # Lines may break anywhere, so titles are looked for by their longer words.
    words = long_words(told) - long_words({row["title"] for row in OBJECTS.values()} - told)
    assert words
    for file in outcome.files:
        if file.kind.code == kind:
            printed = "".join(
                page.get_textpage().get_text_range() for page in pypdfium2.PdfDocument(file.pdf)
            )
            assert [word for word in words if word in printed] == []
