from __future__ import annotations

from pathlib import Path

import pytest

from service.symbols.pictograms import Family, Pictogram, Status, read_pictograms

TEMPLATES = Path(__file__).resolve().parents[2] / "templates"
ROW = """[[mark]]
code = "sharp"
words = "Sharp"
meaning = "A point or an edge here cuts or pricks."
family = "warning"
geometry = "ISO 3864-1"
status = "draft"
"""


def test_a_row_is_read() -> None:
    """Each column of the table has its place."""
    meaning = "A point or an edge here cuts or pricks."
    expected = Pictogram("sharp", "Sharp", meaning, Family.WARNING, "ISO 3864-1", Status.DRAFT)
    assert read_pictograms(ROW) == (expected,)


def test_the_shipped_table_has_a_row_a_drawing() -> None:
    """The table and the drawings beside it name the same marks, each once."""
    folder = TEMPLATES / "pictograms"
    rows = read_pictograms((folder / "pictograms.toml").read_text("utf-8"))
    assert sorted(row.code for row in rows) == sorted(path.stem for path in folder.glob("*.svg"))


@pytest.mark.parametrize(
    ("table", "words"),
    [
        (ROW + ROW, "sharp: it stands twice"),
        (ROW.replace("status", "state"), "too much of: state, status"),
        (ROW.replace('"draft"', '"perhaps"'), "'perhaps' is not a valid Status"),
        (ROW.replace('"warning"', '"square"'), "'square' is not a valid Family"),
    ],
    ids=["twice", "other-column", "other-status", "other-family"],
)
def test_a_wrong_table_is_refused(table: str, words: str) -> None:
    """The table is shipped, so a fault in it is a programmer's."""
    with pytest.raises(ValueError, match=words):
        read_pictograms(table)
