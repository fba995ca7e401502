"""Which of the media types on offer a client likes best (RFC 9110, section 12.5.1)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

_MOST_RANGES = 50


@dataclass(frozen=True, slots=True)
class _Range:
    """A media range such as `image/*` and how much it is liked, from 0 to 1."""

    kind: str
    subkind: str
    quality_ratio: float

    def closeness(self, media_type: str) -> int:
        """Say how closely this names a media type: 3 exactly, 2 its kind, 1 anything, 0 not."""
        kind, _, subkind = media_type.partition("/")
        if self.kind == "*":
            return 1
        if self.kind != kind:
            return 0
        return {subkind: 3, "*": 2}.get(self.subkind, 0)


def choose_media_type(accept: str, offered: Sequence[str]) -> str | None:
    """Choose the media type liked best, the first offered among equals; None when none is liked."""
    ranges = [_read_range(text) for text in accept.split(",")[:_MOST_RANGES] if text.strip()]
    if not ranges:
        return offered[0]
    liked = {media_type: _quality_of(media_type, ranges) for media_type in offered}
    best = max(offered, key=lambda media_type: liked[media_type])
    return best if liked[best] > 0 else None


def _quality_of(media_type: str, ranges: Sequence[_Range]) -> float:
    """The closest range decides, so that `image/*, image/png;q=0` refuses PNG."""
    closest = max(ranges, key=lambda each: each.closeness(media_type))
    return closest.quality_ratio if closest.closeness(media_type) else 0.0


def _read_range(text: str) -> _Range:
    media_range, *parameters = (part.strip().casefold() for part in text.split(";"))
    kind, _, subkind = media_range.partition("/")
    given = [part.removeprefix("q=") for part in parameters if part.startswith("q=")]
    return _Range(kind, subkind, _read_quality(given[0]) if given else 1.0)


def _read_quality(text: str) -> float:
    """A weight that is none counts as not liked."""
    try:
        quality_ratio = float(text)
    except ValueError:
        return 0.0
    return quality_ratio if 0 <= quality_ratio <= 1 else 0.0
