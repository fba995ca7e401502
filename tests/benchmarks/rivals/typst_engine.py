"""Typst: records as JSON, symbols as SVG, everything at its place; it uses all cores."""

from __future__ import annotations

import json
import shutil
import tempfile
from collections.abc import Sequence
from dataclasses import asdict
from pathlib import Path

import typst

from tests.benchmarks.content.records import Card, Record
from tests.benchmarks.content.store import FONTS, MARKS
from tests.benchmarks.engine import Job, run_engine
from tests.benchmarks.rivals.markup import TEMPLATES, symbol_svg


class Typst:
    """One compiler, which keeps fonts and what it has laid out before."""

    def __init__(self, job: Job) -> None:
        """Open the fonts."""
        self._job = job
        self._folder = Path(tempfile.mkdtemp())
        self._source = self._folder / f"{job.kind}.typ"
        shutil.copy(TEMPLATES / self._source.name, self._source)
        self._compiler = typst.Compiler(
            self._source, root="/", font_paths=[FONTS], ignore_system_fonts=True
        )
        self._written = 0

    def render(self, records: Sequence[Record], out: Path) -> None:
        """Hand the records over and write what comes back."""
        # A name of its own each time: the compiler would remember the records of the last one.
        self._written += 1
        handed = self._folder / f"{self._written}.json"
        said = [self._said(record) for record in records]
        handed.write_text(json.dumps(said, ensure_ascii=False), "utf-8")
        self._compiler.compile(
            input=self._source,
            output=out,
            format="pdf",
            sys_inputs={"records": str(handed)},
            pdf_tags=self._job.is_tagged,
        )

    def close(self) -> None:
        """Remove what was handed over."""
        shutil.rmtree(self._folder)

    def _said(self, record: Record) -> dict[str, object]:
        said = asdict(record) | {"symbol": symbol_svg(self._job.symbols[record.address])}
        if isinstance(record, Card):
            said["facts"] = record.facts
            for item in said["items"]:
                item["photo"] = str(self._job.store.thumbnail(item["picture"]))
            for warn in said["warnings"]:
                warn["drawing"] = str(MARKS / f"{warn['mark']}.svg")
        return said


if __name__ == "__main__":
    run_engine(Typst)
