from __future__ import annotations

import pytest

from service.render.proof.text.spelling import is_shaped, plain


@pytest.mark.parametrize(
    ("line", "shaped"),
    [
        pytest.param("B-042 Łódź", False, id="Latin"),
        pytest.param("e\u0301", False, id="a mark with a letter of its own"),
        pytest.param("q\u0301", True, id="a mark without"),
        pytest.param("كل", True, id="Arabic"),
        pytest.param("כל", True, id="Hebrew"),
        pytest.param("भारी", True, id="Devanagari"),
        pytest.param("この箱", False, id="Japanese"),
    ],
)
def test_scripts_that_are_shaped(line: str, *, shaped: bool) -> None:
    """Only what reads back wrongly goes the longer way."""
    assert is_shaped(line) is shaped


@pytest.mark.parametrize(
    ("read", "written"),
    [
        pytest.param("e\u0301\u00a0 a\u2010b\u200b\x02", "é a-b-", id="hyphens, blanks, joiners"),
        pytest.param("all\ufffe\r\nclear", "all- clear", id="a hyphen at the end of a line"),
        pytest.param("o\ufb03ce \ufb01nd", "o\ufb03ce find", id="ligatures"),
        pytest.param("\ufeffŁódź", "Łódź", id="a mark of byte order"),
    ],
)
def test_one_spelling(read: str, written: str) -> None:
    """Kinds of hyphen, blanks, ligatures and invisible signs make no difference."""
    assert plain(read) == plain(written)


def test_letters_make_a_difference() -> None:
    """Capitals, marks and signs are kept apart."""
    spelled = {plain(one) for one in ("Lodz", "Łódź", "lodz", "B-042", "B 042", "B042")}
    assert spelled == {"Lodz", "Ło\u0301dz\u0301", "lodz", "B-042", "B042"}
