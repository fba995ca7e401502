"""Pictures of sheets: of a plan that is kept for a while, and of the PDF of a finished run."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from pathlib import Path

from service.errors import FileNotStoredError, NotFoundError
from service.keeping.desk import Desk
from service.keeping.previews.plans import open_plans
from service.keeping.printing.prints import PDF
from service.render.screen.pages import PageTask, draw_page, drawing_sha256
from service.sentence import Sentence
from service.store.open import reading
from service.store.printed.runs import load_run_record


@dataclass(frozen=True, slots=True)
class SheetFile:
    """A PDF on disk and the name of its content, which never changes."""

    path: Path
    content: str

    def tag(self, page: int, *, width_px: int) -> str:
        """Name the picture of a page by all that decides how it looks."""
        words = (self.content, str(page), drawing_sha256(), str(width_px))
        return hashlib.sha256("\n".join(words).encode()).hexdigest()


def find_run_file(desk: Desk, run_id: int, name: str) -> SheetFile:
    """Find a PDF of a finished run on the shelf.

    Raises:
        NotFoundError: When there is no such run, or it has no such file.
        FileNotStoredError: When the file is lost.
    """
    with reading(desk.engine) as connection:
        record = load_run_record(connection, run_id)
    for file in record.files:
        if file.name == name:
            path = desk.shelf.local_path(file.sha256, PDF)
            if not path.is_file():
                raise FileNotStoredError(file.sha256)
            return SheetFile(path, file.sha256)
    raise NotFoundError(name, what=Sentence("file in run {run_id}", run_id=run_id))


def find_planned_file(desk: Desk, plan: str, name: str) -> SheetFile:
    """Find a file of a plan.

    Raises:
        NotFoundError: When the plan is no longer kept, or has no such file.
    """
    return SheetFile(open_plans(desk).find(plan, name), f"{plan}\n{name}")


def draw_sheet(desk: Desk, file: SheetFile, page: int, *, width_px: int) -> bytes:
    """Draw a page of a file, counted from 1, as PNG, so many dots wide.

    Raises:
        NotFoundError: When it has no such page.
        JobError: When it cannot be drawn.
    """
    drawn = draw_page(PageTask(file.path, page, width_px), desk.workshop.workers)
    if not drawn.png:
        raise NotFoundError(str(page), what="page in this file,")
    return drawn.png
