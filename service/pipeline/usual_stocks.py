"""The stocks each kind of card is tried on, in their order."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from service.cards.kinds import (
    CONTENTS_LIST,
    COVER_CARD,
    END_LABEL,
    LID_CARD,
    OBJECT_TAG,
    SHOULDER_TAG,
    SIDE_CARD,
    WARNING_LABEL,
    CardKind,
)

CARDS = {
    "A4": ("A4 card 4xA6", "A4 card 2xA5", "A4 card"),
    "Letter": ("Letter card 2xhalf", "Letter card"),
}
"""Card stocks from the smallest card to the largest."""
WHOLE_PAGE = {"A4": "A4 card", "Letter": "Letter card"}
LABELS = {
    "A4": (
        "A4 2x4 99.1x67.7",
        "A4 2x5 99.1x57",
        "A4 2x6 99.1x42.3",
        "A4 2x7 99.1x38.1",
        "A4 2x3 99.1x93.1",
        "A4 2x2 99.1x139",
        "A4 3x6 63.5x46.6",
        "A4 3x7 63.5x38.1",
    ),
    "Letter": (
        "Letter 2x5 4x2 in",
        "Letter 2x3 4x3.333 in",
        "Letter 2x7 4x1.333 in",
        "Letter 1x2 8.5x5.5 in",
    ),
}
"""Label stocks in the order they are tried (common practice, no source)."""

WARNINGS = {
    "A4": ("A4 2x4 99.1x67.7", "A4 2x3 99.1x93.1", "A4 2x2 99.1x139", "A4 1x2 199.6x143.5"),
    "Letter": ("Letter 2x3 4x3.333 in", "Letter 2x2 4.25x5.5 in", "Letter 1x2 8.5x5.5 in"),
}
TAGS = {
    "A4": ("A4 card 3x9 60x30", "A4 card 2x5 90x50"),
    "Letter": ("Letter card 3x8 60x30", "Letter card 2x5 90x50"),
}
SHOULDERS = {
    "A4": ("A4 card 6x3 30x90", "A4 card 4x2 45x130"),
    "Letter": ("Letter card 6x2 30x90", "Letter card 4x2 45x130"),
}
"""Label and tag stocks, the smallest first (common practice, no source)."""

TRIED: Mapping[CardKind, Mapping[str, Sequence[str]]] = {
    LID_CARD: CARDS,
    END_LABEL: LABELS,
    SIDE_CARD: CARDS,
    COVER_CARD: {paper: names[-2:] for paper, names in CARDS.items()},
    CONTENTS_LIST: {paper: (name,) for paper, name in WHOLE_PAGE.items()},
    WARNING_LABEL: WARNINGS,
    SHOULDER_TAG: SHOULDERS,
    OBJECT_TAG: TAGS,
}
"""The stocks that are tried for each kind of card, by paper."""
