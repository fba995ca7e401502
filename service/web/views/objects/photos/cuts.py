"""A crop as people say it: how much is cut away at each edge, in per cent."""

from __future__ import annotations

import math
from collections.abc import Mapping

from service.keeping.photos.shown import WHOLE, Ratios
from service.languages.saying import say
from service.records.photos.edit import PhotoCrop

EDGES = ("left", "top", "right", "bottom")
_ALL_PERCENT = 100.0


def write_cuts(crop: PhotoCrop | None) -> dict[str, str]:
    """Write how much is cut away at each edge."""
    left, top, right, bottom = crop.ratios if crop else WHOLE
    cuts = (left, top, 1 - right, 1 - bottom)
    return {
        edge: f"{_ALL_PERCENT * cut:.2f}".rstrip("0").rstrip(".")
        for edge, cut in zip(EDGES, cuts, strict=True)
    }


def read_cuts(typed: Mapping[str, str]) -> tuple[Ratios, dict[str, str]]:
    """Read how much is cut away; faults by edge."""
    cuts: list[float] = []
    faults: dict[str, str] = {}
    for edge in EDGES:
        cut = _read_percent(typed.get(edge, ""))
        if cut is None:
            faults[edge] = say("Type a number from 0 to 99.")
        cuts.append(cut or 0.0)
    left, top, right, bottom = cuts
    for one, other, edge in ((left, right, "right"), (top, bottom, "bottom")):
        if not faults and one + other >= 1:
            faults[edge] = say("Nothing of the photo would be left.")
    return (left, top, 1 - right, 1 - bottom), faults


def _read_percent(text: str) -> float | None:
    """Read a part of the whole; an empty field cuts nothing away."""
    try:
        cut = float(text.strip().rstrip("%").replace(",", ".") or 0) / _ALL_PERCENT
    except ValueError:
        return None
    return cut if math.isfinite(cut) and 0 <= cut < 1 else None
