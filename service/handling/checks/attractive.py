"""Which contents attract pests: textiles, and natural history.

Only what a record says can be found. A container of which nothing is said is looked at yearly,
not left out.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache

from service.contents.packing import Packing
from service.records.record import ContainerKind, ObjectRecord

_TEXTILES = (
    "bunting canvas cloth cotton felt flannel fur jute knit lace linen quilt sacking sailcloth"
    " satin silk textile tweed velvet wool woollen worsted"
)
_NATURAL_HISTORY = (
    "baleen beetle bird butterfly feather fish fur hair herbarium hide horn insect leather moth"
    " mounted pelt plant plume quill seed shellfish skin sponge specimen straw taxidermy wing"
)
"""Words of materials and names; a plural in -s counts as well (common practice, no source)."""


def holds_textiles(packing: Packing) -> bool:
    """Tell whether a container is for garments, or a record in it names a textile."""
    is_cover = packing.container.kind is ContainerKind.GARMENT_COVER
    return is_cover or _any_word(packing, _words(_TEXTILES))


def holds_natural_history(packing: Packing) -> bool:
    """Tell whether a record in the container names skin, feather, insect, plant or the like."""
    return _any_word(packing, _words(_NATURAL_HISTORY))


@cache
def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


def _any_word(packing: Packing, words: frozenset[str]) -> bool:
    records = (packed.record for packed in packing.everything)
    return any(not words.isdisjoint(_words_of(record)) for record in records)


def _words_of(record: ObjectRecord) -> set[str]:
    """Give the words of materials and name, each also without its plural s."""
    found = set(_split((*record.materials, record.object_name)))
    return found | {word.removesuffix("s") for word in found}


def _split(texts: Iterable[str]) -> Iterable[str]:
    return (word for text in texts for word in re.findall(r"[^\W\d_]+", text.casefold()))
