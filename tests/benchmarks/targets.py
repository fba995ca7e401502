"""What the service means to hold against other engines, as ratios of one run on one machine."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from tests.benchmarks.results import Result

Results = Mapping[str, Result]

_NAMES = {
    "weasyprint": "WeasyPrint",
    "chromium": "Chromium",
    "typst": "Typst",
    "reportlab": "ReportLab",
}
_ENGINES = ("weasyprint", "chromium", "typst", "reportlab")
# How many times as long each of these takes at least, in this order; 0 where nothing is promised.
_RATES = (
    ("new cards", "cards", "cards ours", (60, 28, 4, 1.8)),
    ("new labels", "labels", "labels ours", (40, 5.5, 1.8, 2.6)),
    ("cards from kept plates", "cards", "cards reprint", (180, 0, 12, 5)),
    ("labels from kept plates", "labels", "labels reprint", (300, 0, 14, 20)),
    ("warm preview of a card", "warm", "warm ours", (13, 15, 1.5, 0)),
    ("new cards with tags", "cards tagged", "cards tagged ours", (60, 28, 4, 0)),
    ("new labels with tags", "labels tagged", "labels tagged ours", (40, 5.5, 1.8, 0)),
)
# What ours may cost at most against other rows of ours.
_COSTS = (
    ("cards from kept plates, their pictures copied", 2.5, "cards reprint", "copying"),
    ("a card of 2,000, a card of 200", 1.05, "cards many", "cards ours"),
    ("one card of 200 changed, none", 1.2, "cards one changed", "cards reprint"),
    ("new cards proved, not proved", 2.0, "cards ours proved", "cards ours"),
    ("new labels proved, not proved", 2.0, "labels ours proved", "labels ours"),
    ("kept cards proved, not proved", 1.25, "cards reprint proved", "cards reprint"),
    ("kept labels proved, not proved", 1.25, "labels reprint proved", "labels reprint"),
)
_CARD_BYTES, _FONT_BYTES, _LABEL_BYTES = 7_000, 60_000, 1_000


@dataclass(frozen=True, slots=True)
class Target:
    """One promise; `measured` is None where a row it needs is missing."""

    words: str
    limit: float
    measured: float | None
    unit: str = "x"
    is_ceiling: bool = False

    @property
    def is_held(self) -> bool:
        """Whether what was measured keeps to the limit."""
        if self.measured is None:
            return False
        return self.measured <= self.limit if self.is_ceiling else self.measured >= self.limit


def targets(results: Results) -> Sequence[Target]:
    """Compare every promise with what was measured."""
    return [
        *_rates(results),
        *_own(results),
        *_sizes(results),
        *_thumbnails(results),
        *_likeness(results),
    ]


def _rates(results: Results) -> Iterator[Target]:
    for words, rows, own, limits in _RATES:
        for engine, limit in zip(_ENGINES, limits, strict=True):
            if limit:
                ratio = _ratio(results, f"{rows} {engine}", own)
                yield Target(f"{words}, {_NAMES[engine]}", limit, ratio)


def _own(results: Results) -> Iterator[Target]:
    for words, limit, slow, fast in _COSTS:
        yield Target(words, limit, _ratio(results, slow, fast), is_ceiling=True)
    peak = _peaks(results, "cards many", "cards ours")
    yield Target("peak memory at 2,000 cards, at 200", 1.25, peak, is_ceiling=True)
    for engine in ("typst", "chromium"):
        peak = _peaks(results, f"cards {engine}", "cards many")
        yield Target(f"peak memory, {_NAMES[engine]} at 200 against ours at 2,000", 10, peak)


def _sizes(results: Results) -> Iterator[Target]:
    cards, copied = _found(results, "cards tagged ours"), _found(results, "copying")
    bytes_a_card = None
    if cards and copied:
        pictures_a_card = copied.file_bytes / copied.row.count
        bytes_a_card = (cards.file_bytes - _FONT_BYTES) / cards.row.count - pictures_a_card
    words = "a card of a tagged file beside its pictures and 60 kB of fonts"
    yield Target(words, _CARD_BYTES, bytes_a_card, "bytes", is_ceiling=True)
    labels = _found(results, "labels tagged ours")
    bytes_a_label = (labels.file_bytes - _FONT_BYTES) / labels.row.count if labels else None
    words = "a label of a tagged file beside 60 kB of fonts"
    yield Target(words, _LABEL_BYTES, bytes_a_label, "bytes", is_ceiling=True)


def _thumbnails(results: Results) -> Iterator[Target]:
    found = _found(results, "thumbnails")
    said = found.said if found else None
    ratio = said["full_seconds"] / said["draft_seconds"] if said else None
    yield Target("thumbnails of 12 MP, a full decoding", 3, ratio)
    yield Target("their nearness", 45, said["nearness_db"] if said else None, "dB")


def _likeness(results: Results) -> Iterator[Target]:
    found = _found(results, "likeness")
    said = found.said if found else None
    told = (
        ("pixels of a card unlike the layout engine's", 0.3, "pixels_ratio", 100, "%"),
        ("the same in one block of a card", 2, "slot_ratio", 100, "%"),
        ("their largest patch", 1, "blob_mm2", 1, "mm2"),
    )
    for words, limit, name, scale, unit in told:
        measured = scale * said[name] if said else None
        yield Target(words, limit, measured, unit, is_ceiling=True)


def _ratio(results: Results, slow: str, fast: str) -> float | None:
    one, other = _found(results, slow), _found(results, fast)
    return one.each_ms / other.each_ms if one and other else None


def _peaks(results: Results, high: str, low: str) -> float | None:
    one, other = _found(results, high), _found(results, low)
    return one.peak_mib / other.peak_mib if one and other else None


def _found(results: Results, key: str) -> Result | None:
    result = results.get(key)
    return result if result and not result.note else None
