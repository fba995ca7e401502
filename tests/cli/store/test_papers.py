"""Tests for the papers of the round from the command line."""

from __future__ import annotations

from pathlib import Path

import pypdf
import pytest
import typer

from service.cli.store.papers import choose_paper
from tests.cli.store.conftest import Ask, Say


def words_of(path: Path) -> str:
    """Read a paper."""
    return " ".join(page.extract_text() for page in pypdf.PdfReader(path).pages)


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_the_round_is_on_paper(filled: Ask, say: Say, tmp_path: Path) -> None:
    """Sheet, slip with the out and of all that is out, and label; each tells where it lies."""
    sheet, first, slips, label = (tmp_path / "out" / f"{name}.pdf" for name in "abcd")
    assert filled("check-sheet", "-o", sheet)["path"] == str(sheet)
    assert "B-027" in words_of(sheet)
    filled("out", "1931.14.7", "--to", "I. Hale", "--slip", first)
    assert "I. Hale" in words_of(first)
    assert "read back" in say("slip", "-o", slips, "--paper", "a6")[1]
    assert "Marlinspike" in words_of(slips)
    filled("isolation-label", "B-027", "--why", "pests found", "--since", "2026-11-20", "-o", label)
    assert "20 Nov 2026" in words_of(label)


def test_what_cannot_be_printed_is_told(filled: Ask, say: Say, tmp_path: Path) -> None:
    """Nothing is out; an object that is not; a number nobody knows; nothing is due."""
    path = tmp_path / "none.pdf"
    assert say("slip", "-o", path)[0] == 2
    assert say("slip", "1931.14.7", "-o", path)[0] == 3
    assert say("isolation-label", "B-402", "-o", path)[0] == 3
    assert say("isolation-label", "B-027", "--paper", "A3", "-o", path)[0] == 2
    filled("checked", "B-027")
    assert say("check-sheet", "-o", path)[0] == 2
    assert not path.exists()


def test_a_paper_is_named_in_any_case() -> None:
    """Only those that there are."""
    assert choose_paper("letter", ("A4", "Letter")) == "Letter"
    with pytest.raises(typer.BadParameter, match="A4, Letter"):
        choose_paper("A6", ("A4", "Letter"))
