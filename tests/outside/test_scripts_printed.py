"""Texts of eleven scripts, printed and read back (Unicode Standard, code charts).

The titles are those of `sample_records/scripts.csv`. The proof compares shaped lines glyph by glyph
with a HarfBuzz run of its own; here the plain ones are read by a second reader, pypdf.
"""

from __future__ import annotations

import csv
import io
import unicodedata
from collections.abc import Iterator
from pathlib import Path

import pypdf
import pytest

from service.cards.kinds import CONTENTS_LIST, LID_CARD
from service.pipeline.options import PrintFile, PrintOptions
from service.pipeline.ready import Workshop
from service.pipeline.run import print_collection
from service.records.read_tables import read_tables
from service.records.record import Collection
from service.wiring import open_workshop

SCRIPTS = Path(__file__).parents[2] / "sample_records" / "scripts.csv"
CONTAINERS = (
    'container_number,kind,title,lid,lid_size\nS-01,box,"письмо, γραφή, 文字, كتابة",opaque,\n'
)
PLAIN = ("S.1", "S.2", "S.3", "S.7", "S.8", "S.9")
"""Latin, Greek, Cyrillic, Chinese, Japanese and Korean: read in the order they are written."""


@pytest.fixture(scope="module")
def workshop(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Workshop]:
    """Open a workshop with one child process."""
    with open_workshop(tmp_path_factory.mktemp("data"), processes=1) as opened:
        yield opened


def _rows() -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(SCRIPTS.read_text(encoding="utf-8-sig"))))


def scripts_collection() -> Collection:
    """Give one box that holds every title."""
    packings = "container_number,revision,object_number\n" + "".join(
        f"S-01,1,{row['object_number']}\n" for row in _rows()
    )
    return read_tables(
        {
            "objects.csv": SCRIPTS.read_bytes(),
            "containers.csv": CONTAINERS.encode(),
            "packings.csv": packings.encode(),
        }
    )


def _print(workshop: Workshop) -> tuple[PrintFile, ...]:
    options = PrintOptions(kinds=(LID_CARD, CONTENTS_LIST))
    outcome = print_collection(scripts_collection(), {}, options, workshop)
    codes = {finding.code for finding in outcome.findings}
    assert codes.isdisjoint({"card-failed", "cannot-be-printed"})
    return outcome.files


@pytest.mark.print
@pytest.mark.slow
def test_every_script_prints_without_an_empty_box(workshop: Workshop) -> None:
    """All titles pass the proof, and those written left to right are read by another reader."""
    files = {file.kind: file for file in _print(workshop)}
    reader = pypdf.PdfReader(io.BytesIO(files[CONTENTS_LIST].pdf))
    text = _plain("".join(page.extract_text() for page in reader.pages))
    lost = [
        row["title"]
        for row in _rows()
        if row["object_number"] in PLAIN and _plain(row["title"]) not in text
    ]
    assert lost == []


def _plain(text: str) -> str:
    """Bring a text to one spelling without blanks, which a reader may set as it likes."""
    return "".join(unicodedata.normalize("NFKC", text).split())
