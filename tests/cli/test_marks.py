from __future__ import annotations

import json
from pathlib import Path

import pypdf
import pytest

from service.cli.marks import print_marks
from service.config import Settings


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_the_specimen_is_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The file goes into a folder that need not be there, and is told in words and as JSON."""
    path = tmp_path / "new" / "marks.pdf"
    settings = Settings(data=tmp_path / "data", processes=1)
    print_marks(settings, path, paper="a4", as_json=False)
    assert "100 % on A4" in capsys.readouterr().out
    print_marks(settings, path, paper="letter", as_json=True)
    assert json.loads(capsys.readouterr().out) == {"path": str(path), "paper": "Letter"}
    assert pypdf.PdfReader(path).pages[0].mediabox.width == pytest.approx(612, abs=0.01)
