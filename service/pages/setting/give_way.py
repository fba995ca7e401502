"""When a second language gives way: before anything else of a card does.

It gives way wholly, but on tags, where names of hazards and cautions may stay alone.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from service.cards.card import Card, ContentsList, LidCard, ObjectTag, ShoulderTag, WarningLabel
from service.cards.fingerprint import AnyCard
from service.pages.lid.grid import GOOD_MM
from service.pages.page import Page, PictureBlock, TextBlock, TextStyle
from service.pages.setting.second import PURPOSE, names_only


def in_english(card: AnyCard) -> AnyCard:
    """Give the card without its words in a second language."""
    return replace(card, head=replace(card.head, second=None))


def ways_to_speak(card: AnyCard) -> Iterator[AnyCard]:
    """Give the ways to say a card in two languages, the one that says most first."""
    yield card
    second = card.head.second
    if second is not None and isinstance(card, ObjectTag | ShoulderTag):
        yield replace(card, head=replace(card.head, second=names_only(second)))


def has_room(card: Card, both: Sequence[Page], english: Sequence[Page]) -> bool:
    """Tell whether pages in both languages cost nothing that the pages in English show.

    That is a page more, except of a contents list, a picture less, on a lid card pictures below
    a good size, or on tags English words that another tag takes.
    """
    if isinstance(card, ObjectTag | ShoulderTag):
        return keeps_english(both, english)
    if len(both) > len(english) and not isinstance(card, ContentsList):
        return False
    after, before = _pictures_mm(both), _pictures_mm(english)
    least_mm = min((*before, GOOD_MM)) if isinstance(card, LidCard) else 0.0
    return len(after) == len(before) and all(side_mm >= least_mm for side_mm in after)


def keeps_english(both: Sequence[Page], english: Sequence[Page]) -> bool:
    """Tell whether every page says the same in English, in the same type."""
    return [*map(_english_of, both)] == [*map(_english_of, english)]


def _english_of(page: Page) -> list[tuple[str, TextStyle]]:
    blocks = (block for block in page.blocks if isinstance(block, TextBlock))
    return [(block.whole, block.style) for block in blocks if block.purpose != PURPOSE]


def says_all(card: Card, pages: Sequence[Page]) -> bool:
    """Tell whether nothing that the card says in a second language had to give way.

    Of warning labels each speaks for itself. Of tags every word of a hazard or caution counts, and
    no other: what a larger tag is worth.
    """
    second = card.head.second
    if second is None:
        return True
    said = [_say_again(page) for page in pages]
    if isinstance(card, ObjectTag | ShoulderTag):
        return all(words in " ".join(said) for words in map(second.beside, _warnings_of(card)))
    return all(said) if isinstance(card, WarningLabel) else any(said)


def _warnings_of(card: ObjectTag | ShoulderTag) -> Iterator[str]:
    cautions = card.cautions if isinstance(card, ObjectTag) else ()
    for warn in (*card.hazards, *cautions):
        yield from (warn.heading, warn.instruction)


def _say_again(page: Page) -> str:
    blocks = (block for block in page.blocks if isinstance(block, TextBlock))
    return " ".join(block.whole for block in blocks if block.purpose == PURPOSE)


def _pictures_mm(pages: Sequence[Page]) -> list[float]:
    """Measure the short side of every picture."""
    return [
        min(block.rect.width_mm, block.rect.height_mm)
        for page in pages
        for block in page.blocks
        if isinstance(block, PictureBlock)
    ]
