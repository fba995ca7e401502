"""A picture in a reply: its width, and its ETag, with which it need not be drawn again."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Annotated

from fastapi import Depends, Header, Path, Query, Response

from service.web.store.asking import TheCounter
from service.web.store.counter import Counter

PNG = "image/png"
PICTURE: dict[int | str, dict[str, object]] = {
    200: {"content": {PNG: {}}},
    304: {"description": "The picture you have, named in If-None-Match, still holds."},
}
MOST_WIDTH_PX = 2400
"""Some 290 dots an inch on the long side of A4: beyond what a screen shows of it."""
_TAG = re.compile(r'(?:W/)?"([^"]*)"')

_DEFAULT_WIDTH_PX = 900

PageNumber = Annotated[int, Query(ge=1, le=10_000, description="Counted from 1.")]
SheetNumber = Annotated[int, Path(ge=1, le=1_000_000, description="From 1.", examples=[1])]
Paper = Annotated[str, Query(pattern="^(A4|Letter)$", description="Where the size is chosen.")]


@dataclass(frozen=True, slots=True)
class Looking:
    """A request for a picture: how wide it is to be, and the ETags of what is known already."""

    counter: Counter
    width_px: int
    known: frozenset[str]

    def answer(self, tag: str, draw: Callable[[], bytes]) -> Response:
        """Answer with a picture, or with nothing where it is known already (RFC 9110, 13.1.2).

        Whoever keeps it asks each time whether it still holds: a card changes with its records.
        """
        headers = {"ETag": f'"{tag}"', "Cache-Control": "private, no-cache"}
        if tag in self.known:
            return Response(status_code=304, headers=headers)
        return Response(draw(), media_type=PNG, headers=headers)


def _looking(
    counter: TheCounter,
    width_px: Annotated[
        int, Query(ge=50, le=MOST_WIDTH_PX, description="How wide the picture is.")
    ] = _DEFAULT_WIDTH_PX,
    known: Annotated[
        str,
        Header(
            alias="If-None-Match", max_length=2000, description="The ETag of the picture you have."
        ),
    ] = "",
) -> Looking:
    return Looking(counter, width_px, frozenset(_TAG.findall(known)))


TheLooking = Annotated[Looking, Depends(_looking)]
