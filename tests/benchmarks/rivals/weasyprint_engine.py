"""WeasyPrint: natural HTML, or ("lean") half the elements, fixed places, no garbage collector."""

from __future__ import annotations

import gc
from collections.abc import Sequence
from pathlib import Path

import weasyprint
from weasyprint.text.fonts import FontConfiguration

from tests.benchmarks.content.records import Record
from tests.benchmarks.engine import Job, run_engine
from tests.benchmarks.rivals.markup import Markings


class WeasyPrint:
    """One document of all records; fonts and style sheet are kept from one to the next."""

    def __init__(self, job: Job) -> None:
        """Read the template."""
        is_lean = "lean" in job.options
        if is_lean:
            gc.disable()
        layout = "lean" if is_lean else job.kind
        self._markings = Markings(job, layout, has_style=False)
        self._fonts = FontConfiguration()
        self._css = weasyprint.CSS(string=self._markings.css, font_config=self._fonts)
        self._is_tagged = job.is_tagged

    def render(self, records: Sequence[Record], out: Path) -> None:
        """Lay out and write one document."""
        document = weasyprint.HTML(string=self._markings.fill(records))
        document.write_pdf(
            out, font_config=self._fonts, stylesheets=[self._css], pdf_tags=self._is_tagged
        )

    def close(self) -> None:
        """Nothing was started."""


if __name__ == "__main__":
    run_engine(WeasyPrint)
