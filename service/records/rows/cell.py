"""One cell: its cleaned text and where it stands."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import TypeAlias

from service.findings import Where
from service.records.rows.notebook import Notebook
from service.records.rows.text import means_nothing
from service.sentence import Sentence

Item: TypeAlias = str | Mapping[str, str]
"""One item of a list: as written, or already taken apart by whoever wrote a document."""


@dataclass(frozen=True, slots=True)
class Cell:
    """The cleaned text of a cell; `listed` holds its items where the source gave a list."""

    text: str
    where: Where
    column: str
    notebook: Notebook
    listed: tuple[Item, ...] | None = None

    @property
    def value(self) -> str:
        """The text, empty where it only says that nothing is known."""
        return "" if means_nothing(self.text) else self.text

    def items(self, *, separator: str = ";") -> tuple[Item, ...]:
        """Give the items of a list, empty ones left out."""
        if self.listed is not None:
            return self.listed
        parts = (part.strip() for part in self.text.split(separator))
        return tuple(part for part in parts if part)

    def texts(self, *, separator: str = ";") -> tuple[str, ...]:
        """Give the items that are plain text."""
        return tuple(item for item in self.items(separator=separator) if isinstance(item, str))

    def note(self, code: str, message: Sentence, *, advice: Sentence | None = None) -> None:
        """Write down a finding at this cell."""
        where = replace(self.where, column=self.column)
        self.notebook.note(code, where, message, advice=advice)
