"""The fingerprint of a card: it changes when, and only when, what the card says changes.

SHA-256 (FIPS 180-4) over canonical JSON (sorted keys, no blanks, UTF-8; in the spirit of RFC 8785).
Left out is what would be circular or restless: the revision, the letters themselves, the query of
the address, and who packed when.
"""

from __future__ import annotations

import hashlib
import json
from dataclasses import asdict, replace
from typing import TypeVar

from service.cards.card import Card

LETTERS = "BCDFGHJKLMNPRSTVWXYZ"
"""Twenty capitals: no vowels that could make words, no I, O or Q that pass for figures."""
NUMBER_OF_LETTERS = 4
_RESTLESS = ("revision", "packed", "query", "check_letters")

AnyCard = TypeVar("AnyCard", bound=Card)


def fingerprint_card(card: Card) -> str:
    """Give the SHA-256 of what a card says, as 64 hexadecimal digits."""
    said = asdict(card)
    for name in _RESTLESS:
        del said["head"][name]
    if card.head.second is None:
        # A card in English alone says what it said before there were other languages.
        del said["head"]["second"]
    canonical = json.dumps(said, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    return hashlib.sha256(canonical.encode()).hexdigest()


def check_letters(fingerprint: str) -> str:
    """Turn a fingerprint into the four letters printed beside the revision."""
    value = int(fingerprint[:16], 16)
    letters = []
    for _ in range(NUMBER_OF_LETTERS):
        value, place = divmod(value, len(LETTERS))
        letters.append(LETTERS[place])
    return "".join(letters)


def seal_card(card: AnyCard, *, dated: bool) -> AnyCard:
    """Put the check letters on a card; a `dated` one carries them in its address too."""
    letters = check_letters(fingerprint_card(card))
    query = f"r={card.head.revision}&k={letters}" if dated else ""
    return replace(card, head=replace(card.head, check_letters=letters, query=query))
