"""The folder of pictures and symbols the benchmark draws from, made once and frozen by digests."""

from __future__ import annotations

import hashlib
import json
import tempfile
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

from service.symbols.symbol import Level, Mode, Symbol, encode_symbol
from tests.benchmarks.content.marks import mark_operators
from tests.benchmarks.content.photos import make_photos, make_thumbnails, thumbnail_path
from tests.benchmarks.content.records import PICTURES, Record, digest_of, make_cards, make_labels
from tests.benchmarks.content.words import WARNINGS

ROOT = Path(__file__).parents[3]
FONTS = ROOT / "templates" / "fonts"
MARKS = ROOT / "templates" / "pictograms"
USUAL_FOLDER = Path(tempfile.gettempdir()) / "underlid-benchmark"

CARDS, LABELS = 2000, 2100
TEXTS_SHA256 = "df50056ce549114a150fdd87c837ca56750bf1099900d26b21d5902649204cf7"
PIXELS_SHA256 = "5cfee81446042461bf0c8e30575ea133de1cc9514ad4cefac7eae3819400f695"
"""Raw pixels, before any JPEG encoder: thumbnails, then photos."""


class ContentChangedError(Exception):
    """What would be measured is not what was measured before."""


@dataclass(frozen=True, slots=True)
class Store:
    """What every engine is given besides the texts."""

    folder: Path

    def thumbnail(self, number: int) -> Path:
        """Name the file of a picture."""
        return thumbnail_path(self.folder / "photos", number)

    def symbols(self) -> dict[str, Symbol]:
        """Give the ready-made symbols by what they hold."""
        stored: dict[str, list[str]] = json.loads(self._symbols_path.read_text("ascii"))
        digits = bytes.maketrans(b"01", b"\0\1")
        return {
            address: Symbol(
                address,
                Level.M,
                Mode.BYTE,
                (len(rows) - 17) // 4,
                tuple(row.encode("ascii").translate(digits) for row in rows),
            )
            for address, rows in stored.items()
        }

    def marks(self) -> dict[str, str]:
        """Give the pictograms as operators of a content stream, 24 units wide and high."""
        stored: dict[str, str] = json.loads((self.folder / "marks.json").read_text("ascii"))
        return stored

    def pictures(self) -> tuple[str, ...]:
        """Give the SHA-256 of every thumbnail's file, as they are known since they were made."""
        stored: dict[str, list[str]] = json.loads(self._listed_path.read_text("ascii"))
        return tuple(stored["thumbnails"])

    @property
    def _listed_path(self) -> Path:
        return self.folder / "digests.json"

    @property
    def _symbols_path(self) -> Path:
        return self.folder / "symbols.json"

    def make(self) -> None:
        """Make what the folder lacks and check the rest.

        Raises:
            ContentChangedError: When texts or pixels are not those of earlier runs.
        """
        texts = digest_of((*make_cards(CARDS), *make_labels(LABELS)))
        _compare("texts", texts, TEXTS_SHA256)
        if not self._listed_path.exists():
            self._make_all()
        stored = json.loads(self._listed_path.read_text("ascii"))
        _compare("pixels", stored["pixels"], PIXELS_SHA256)
        _compare("stored files", self._files(), stored["files"])

    def _make_all(self) -> None:
        photos = self.folder / "photos"
        photos.mkdir(parents=True, exist_ok=True)
        pixels = make_thumbnails(photos, PICTURES) + make_photos(photos)
        self._make_symbols((*make_cards(CARDS), *make_labels(LABELS)))
        drawn = {code: mark_operators(MARKS / f"{code}.svg") for code, _, _ in WARNINGS}
        (self.folder / "marks.json").write_text(json.dumps(drawn), "ascii")
        listed = {
            "pixels": hashlib.sha256(pixels.encode()).hexdigest(),
            "files": self._files(),
            "thumbnails": [_sha256_of(self.thumbnail(number)) for number in range(PICTURES)],
        }
        self._listed_path.write_text(json.dumps(listed), "ascii")

    def _make_symbols(self, records: Iterable[Record]) -> None:
        digits = bytes.maketrans(b"\0\1", b"01")
        made = {}
        for record in records:
            rows = encode_symbol(record.address, level=Level.M).modules
            made[record.address] = [row.translate(digits).decode("ascii") for row in rows]
        self._symbols_path.write_text(json.dumps(made), "ascii")

    def _files(self) -> str:
        digest = hashlib.sha256()
        for path in self._kept():
            digest.update(path.name.encode() + path.read_bytes())
        return digest.hexdigest()

    def _kept(self) -> Iterator[Path]:
        yield from sorted((self.folder / "photos").glob("*.jpg"))
        yield from (self._symbols_path, self.folder / "marks.json")


def _sha256_of(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest()


def _compare(what: str, found: str, wanted: str) -> None:
    if found != wanted:
        msg = f"the {what} are not those of earlier runs: {found}, not {wanted}"
        raise ContentChangedError(msg)
