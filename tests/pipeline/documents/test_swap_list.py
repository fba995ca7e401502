from __future__ import annotations

import unicodedata
from dataclasses import replace

import pypdf
import pytest

from service.cards.swap_list import SwapList
from service.errors import ContentsError
from service.pipeline.documents.swap_list import print_swap_list
from service.pipeline.ready import Workshop
from tests.pages.swap_list.test_fit import made

TITLES = (
    ("Llyfr y môr a'r ŷd", "o gŵyl yr harbwr"),
    ("Ναυτικός χάρτης", "του βόρειου κόλπου"),
    ("Latarnia żeglarska", "z mosiądzu"),
    ("سدس بحري", "من النحاس"),
    ("ארון עץ", "ישן עץ"),
)
READ_FROM_LEFT = 3


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_the_list_is_printed_and_proved(workshop: Workshop) -> None:
    """An independent reader finds every number and reason on as many pages as there are."""
    path = print_swap_list(made(12), workshop, paper="Letter")
    read = pypdf.PdfReader(path)
    words = " ".join(page.extract_text() for page in read.pages)
    assert all(f"B-{number:03}" in words for number in range(12))
    assert "r3 KMTF" in words
    assert len(read.pages) > 1
    assert read.pages[0].mediabox.width == pytest.approx(612, abs=0.01)


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_every_word_of_every_script_is_printed(workshop: Workshop) -> None:
    """Titles of five scripts before and after, places and long numbers: all pass the proof.

    Words that run from the left are read again by pypdf; the others are proved glyph by glyph.
    """
    row = made(1).rows[0]
    rows = tuple(
        replace(
            row,
            container_number=f"PMM.STORE/2019-OVERFLOW.{number:04}-REHOUSED-A",
            location=("Old Ropewalk \u16a0", "rolling rack 12, east face"),
            reasons=(f"title of X.{number} changed from '{title}' to '{title} {more}'",),
        )
        for number, (title, more) in enumerate(TITLES)
    )
    path = print_swap_list(replace(made(1), rows=rows), workshop)
    read = _plain("".join(page.extract_text() for page in pypdf.PdfReader(path).pages))
    wanted = [
        words
        for row in rows
        for words in (row.container_number, row.card, row.where, row.old, row.new, *row.location)
    ]
    wanted += [reason for row in rows[:READ_FROM_LEFT] for reason in row.reasons]
    assert [words for words in wanted if _plain(words) not in read] == []


def test_an_empty_list_is_not_printed(workshop: Workshop) -> None:
    """Nothing to walk for is said in words."""
    with pytest.raises(ContentsError, match="No card"):
        print_swap_list(SwapList("", "", ()), workshop)


def _plain(text: str) -> str:
    """Bring a text to one spelling without blanks, which a reader may set as it likes."""
    spelled = text.replace("\u16a0", "[U+16A0]")
    return "".join(unicodedata.normalize("NFKC", spelled).split())
