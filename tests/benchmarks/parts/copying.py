"""The floor under every file of cards: the bytes of its pictures, read and written."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from tests.benchmarks.content.records import Card, Record
from tests.benchmarks.engine import Job, run_engine


class Copying:
    """Reads each picture of each card and writes it into one file."""

    def __init__(self, job: Job) -> None:
        """Take the store."""
        self._store = job.store

    def render(self, records: Sequence[Record], out: Path) -> None:
        """Copy the pictures of all cards."""
        with out.open("wb") as file:
            for card in records:
                assert isinstance(card, Card)
                for item in card.items:
                    file.write(self._store.thumbnail(item.picture).read_bytes())

    def close(self) -> None:
        """Nothing was started."""


if __name__ == "__main__":
    run_engine(Copying)
