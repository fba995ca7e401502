"""Tests for the print command's work on disk, in this process."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from rich.console import Console

from service.cards.kinds import COVER_CARD
from service.cli.printing import PrintRequest, print_source
from service.config import Settings
from service.errors import TooManyFilesError
from service.pipeline.options import PrintOptions

ROOT = Path(__file__).parents[2]
DEMO = ROOT / "sample_records" / "port_merrow"


def _settings(tmp_path: Path) -> Settings:
    return Settings(data=tmp_path / "data", processes=1)


@pytest.mark.print
@pytest.mark.slow
def test_files_and_words(tmp_path: Path) -> None:
    """Files are written under their names and listed, with a progress bar on a terminal."""
    stream = io.StringIO()
    console = Console(file=stream, force_terminal=True, width=200, highlight=False)
    options = PrintOptions(kinds=(COVER_CARD,))
    request = PrintRequest(DEMO, tmp_path / "out", options)
    assert print_source(console, _settings(tmp_path), request) == 0
    assert [path.name for path in (tmp_path / "out").iterdir()] == ["cover-card, A4 card 2xA5.pdf"]
    assert "2 cards on 1 sheet" in stream.getvalue()


@pytest.mark.print
@pytest.mark.slow
def test_several_files_need_a_folder(tmp_path: Path) -> None:
    """Two kinds cannot go into one name."""
    request = PrintRequest(
        ROOT / "sample_records" / "one_box.json", tmp_path / "a.pdf", PrintOptions()
    )
    with pytest.raises(TooManyFilesError):
        print_source(Console(file=io.StringIO()), _settings(tmp_path), request)
