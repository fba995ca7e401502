"""Chromium printing the natural HTML: a new process, or ("warm") one that is kept."""

from __future__ import annotations

import shutil
import subprocess
import tempfile
from collections.abc import Sequence
from pathlib import Path

from tests.benchmarks.content.records import Record
from tests.benchmarks.engine import Job, run_engine
from tests.benchmarks.rivals.browser import FLAGS, Browser, find_browser
from tests.benchmarks.rivals.markup import Markings


class Chromium:
    """One document of all records, handed over as a file."""

    def __init__(self, job: Job) -> None:
        """Read the template; start the browser only where it is kept."""
        self._job = job
        self._markings = Markings(job, job.kind, has_style=True)
        self._folder = Path(tempfile.mkdtemp())
        self._page = self._folder / "page.html"
        self._program = find_browser() or ""
        self._kept = Browser(self._program, self._profile) if "warm" in job.options else None

    @property
    def _profile(self) -> Path:
        return self._folder / "profile"

    def render(self, records: Sequence[Record], out: Path) -> None:
        """Write the page, and have it printed."""
        self._page.write_text(self._markings.fill(records), "utf-8")
        if self._kept:
            self._kept.print_page(self._page.as_uri(), out, is_tagged=self._job.is_tagged)
            return
        words = [*FLAGS, "--no-pdf-header-footer", f"--user-data-dir={self._profile}"]
        if not self._job.is_tagged:
            words.append("--disable-pdf-tagging")
        words.append(f"--print-to-pdf={out}")
        subprocess.run(
            [self._program, *words, self._page.as_uri()], check=True, capture_output=True
        )

    def close(self) -> None:
        """End the browser and remove what it kept."""
        if self._kept:
            self._kept.close()
        shutil.rmtree(self._folder, ignore_errors=True)


if __name__ == "__main__":
    run_engine(Chromium)
