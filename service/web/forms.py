"""The multipart form of a print request, and its way onto disk under names of our own."""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Annotated, Literal

from fastapi import UploadFile
from pydantic import BaseModel, ConfigDict, Field, StringConstraints

from service.sentence import Sentence
from service.web.replies.refusals import Refusal, RefusedError
from service.web.work import Choice, Job, Picture

MOST_RECORDS_BYTES = 64 * 1024 * 1024
MOST_FILES = 2000
# A list field is as many fields as it has entries: every container may be named.
MOST_FIELDS = 2000

_Word = Annotated[str, StringConstraints(max_length=200)]
_Position = Annotated[int, Field(ge=1, le=1000)]


class PrintForm(BaseModel):
    """Records, photos called as the records call them, and how they are to be printed."""

    model_config = ConfigDict(extra="forbid")

    records: UploadFile | str = Field(
        description="JSON document: museum, objects, containers, packings; at most 64 MB."
    )
    photos: list[UploadFile] = Field(
        default_factory=list, description="Photos; the file name is the name in the records."
    )
    kind: list[_Word] = Field(
        default_factory=list, description="Kinds of card; none, those that are always printed."
    )
    stock: _Word = Field(default="", description="A stock by name; none is chosen by measure.")
    paper: Literal["A4", "Letter"] = Field(default="A4", description="Where stocks are chosen.")
    start: _Position = Field(default=1, description="First free position of the first sheet.")
    skip: list[_Position] = Field(
        default_factory=list, description="Used or spoiled positions of the first sheet."
    )
    copies: int = Field(default=1, ge=1, le=100, description="How often each card is printed.")
    container: list[_Word] = Field(
        default_factory=list, description="Print only these container numbers; none prints all."
    )
    page: int = Field(default=1, ge=1, description="For image/png: the sheet, counted from 1.")
    dpi: float = Field(default=150, ge=36, le=600, description="For image/png: dots an inch.")

    def to_choice(self) -> Choice:
        """Give what was chosen."""
        return Choice(
            kinds=tuple(self.kind),
            stock=self.stock,
            paper=self.paper,
            start_position=self.start,
            skipped=frozenset(self.skip),
            copies=self.copies,
            containers=frozenset(self.container),
        )

    def to_picture(self) -> Picture:
        """Give which page is wanted as a picture."""
        return Picture(self.page, self.dpi)


@contextmanager
def receive(
    form: PrintForm,
    choice: Choice | None = None,
    picture: Picture | None = None,
    *,
    scratch: Path | None = None,
) -> Iterator[Job]:
    """Lay records and photos out for a press, below `scratch`; they are gone again afterwards.

    Raises:
        RefusedError: When the records are too large or two photos share a name.
    """
    with tempfile.TemporaryDirectory(prefix="underlid-", dir=scratch) as folder:
        photos = _keep(form.photos, Path(folder))
        yield Job(_read_records(form.records), photos, choice, picture)


def _read_records(sent: UploadFile | str) -> bytes:
    """Read the document, but not much more than the largest that is taken.

    Raises:
        RefusedError: When it is larger.
    """
    data = sent.encode() if isinstance(sent, str) else sent.file.read(MOST_RECORDS_BYTES + 1)
    if len(data) > MOST_RECORDS_BYTES:
        raise RefusedError(Refusal.TOO_LARGE, "The records are larger than 64 MB.")
    return data


def _keep(photos: Sequence[UploadFile], folder: Path) -> dict[str, Path]:
    """Write photos under numbers: what the sender calls them is only ever compared.

    Raises:
        RefusedError: When two share a name.
    """
    kept: dict[str, Path] = {}
    for number, photo in enumerate(photos):
        name = photo.filename or ""
        if name in kept:
            raise RefusedError(
                Refusal.SAME_PHOTO_TWICE,
                Sentence("Two photos are called {name!r}.", name=name[:200]),
            )
        kept[name] = folder / f"{number:04}"
        with kept[name].open("wb") as file:
            shutil.copyfileobj(photo.file, file)
    return kept
