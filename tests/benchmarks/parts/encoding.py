"""The QR symbols alone, which all engines are given ready-made."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from service.symbols.symbol import Level, encode_symbol
from tests.benchmarks.content.records import Record
from tests.benchmarks.engine import Job, run_engine


class Encoding:
    """Encodes what each record says in its symbol."""

    def __init__(self, job: Job) -> None:
        """Take the symbols that are expected."""
        self._expected = job.symbols

    def render(self, records: Sequence[Record], out: Path) -> None:
        """Encode all; the file only says how many modules they have."""
        modules = 0
        for record in records:
            symbol = encode_symbol(record.address, level=Level.M)
            assert symbol.modules == self._expected[record.address].modules
            modules += symbol.side_modules**2
        out.write_text(f"{modules}\n", "ascii")

    def close(self) -> None:
        """Nothing was started."""


if __name__ == "__main__":
    run_engine(Encoding)
