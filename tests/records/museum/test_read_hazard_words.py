from __future__ import annotations

import pytest

from service.findings import Where
from service.records.museum.hazard_words import HazardWords
from service.records.museum.read_hazard_words import MOST_SIGNS, read_hazard_words
from service.records.read_json import read_json
from service.records.read_tables import read_tables
from service.records.rows.notebook import Notebook

WHERE = Where(file="museum.toml", column="hazard_words")


def read(values: object) -> tuple[tuple[HazardWords, ...], list[tuple[str, str]]]:
    """Give what was read, and code and column of what was noted."""
    notebook = Notebook()
    words = read_hazard_words(values, where=WHERE, notebook=notebook)
    return words, [(one.code, one.where.column) for one in notebook.findings()]


def test_words_are_read_by_hazard() -> None:
    """A code may be written as people write it; the order of the group does not count."""
    words, noted = read({"Lead": "Gloves. ", "arsenic": "Call the desk."})
    assert words == (HazardWords("arsenic", "Call the desk."), HazardWords("lead", "Gloves."))
    assert noted == []


@pytest.mark.parametrize("text", ["", "  ", 3, ["Gloves."], "x" * (MOST_SIGNS + 1)])
def test_no_hazard_is_left_without_words(text: object) -> None:
    """What is no precaution is noted, and the usual words stand."""
    assert read({"lead": text}) == ((), [("wrong-type", "hazard_words/lead")])
    assert read({"lead": "x" * MOST_SIGNS})[1] == []


def test_what_is_no_hazard_is_noted() -> None:
    """A slip in a code words nothing; nor does something that is no group."""
    assert read({"leed": "Gloves."}) == ((), [("unknown-hazard", "hazard_words/leed")])
    assert read("Gloves.") == ((), [("wrong-type", "hazard_words")])


def test_the_group_stands_in_toml_and_in_json() -> None:
    """As README shows it, and as an object of the museum."""
    toml = b'[hazard_words]\narsenic = "Call the desk."'
    tables = read_tables({"objects.csv": b"number\n1", "museum.toml": toml})
    document = read_json(
        b'{"museum": {"hazard_words": {"arsenic": "Call the desk."}}}', name="a.json"
    )
    wanted = (HazardWords("arsenic", "Call the desk."),)
    assert tables.museum.hazard_words == document.museum.hazard_words == wanted
    assert tables.findings == document.findings == ()
