"""What somebody who scans a printed card is told at once: whether it still holds."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from service.cards.fingerprint import LETTERS, NUMBER_OF_LETTERS
from service.sentence import Sentence, join_sentences


class Fate(StrEnum):
    """What became of a printed card."""

    ATTACHED = "attached"
    MADE = "made"
    WITHDRAWN = "withdrawn"
    SPOILED = "spoiled"


class Answer(StrEnum):
    """The answer in one word or two."""

    CURRENT = "current"
    OUT_OF_DATE = "out of date"
    WITHDRAWN = "withdrawn"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class Standing:
    """The answer and the sentence that explains it."""

    answer: Answer
    sentence: str


@dataclass(frozen=True, slots=True)
class KnownCard:
    """A card of the container that was scanned, as the store knows it.

    `revision` and `letters` are as printed. `printed_fingerprint` is made anew from the content
    that was kept, `today_fingerprint` from what the records say now: both by one and the same
    program, so that a program which learns to print more makes no card wrong. The latter is None
    where the container gets no such card any more.
    """

    revision: int
    letters: str
    printed_fingerprint: str
    today_fingerprint: str | None
    fate: Fate


_CURRENT = Sentence(
    "This card says what the records say today. What nobody has recorded may still do harm: look"
    " before you handle, and ask if in doubt."
)
_NEVER_ATTACHED = Sentence("Nobody has marked it as attached yet.")
_OUT_OF_DATE = Sentence(
    "This card is out of date: the records say something else today. Do not rely on it."
)
_NOT_WANTED = Sentence(
    "This card is out of date: the container gets no card of this kind any more. Do not rely on it."
)
_OFF = {
    Fate.WITHDRAWN: Sentence(
        "This card was withdrawn: another one took its place. Take it off; do not rely on it."
    ),
    Fate.SPOILED: Sentence(
        "This card was marked as spoiled. It should be on no container; do not rely on it."
    ),
}
_NO_REVISION = Sentence(
    "The symbol names no revision: compare the letters printed on the card with those of the"
    " newest one."
)

_LIKELIEST = tuple(Fate)
"""Of cards that look alike, which one is in the scanner's hand, the likeliest first."""


def judge(printed_fingerprint: str, today_fingerprint: str | None, *, fate: Fate) -> Standing:
    """Say whether a printed card still holds; None means that none is wanted today."""
    if fate in _OFF:
        return Standing(Answer.WITHDRAWN, _OFF[fate])
    if today_fingerprint is None:
        return Standing(Answer.OUT_OF_DATE, _NOT_WANTED)
    if printed_fingerprint != today_fingerprint:
        return Standing(Answer.OUT_OF_DATE, _OUT_OF_DATE)
    if fate is Fate.MADE:
        return Standing(Answer.CURRENT, join_sentences(_CURRENT, _NEVER_ATTACHED))
    return Standing(Answer.CURRENT, _CURRENT)


def judge_scan(revision: int | None, letters: str, known: Iterable[KnownCard]) -> Standing:
    """Say whether the card with this revision and these letters still holds.

    Both must be those of a known card: a revision alone could have been typed by anybody. Of
    several that look alike the attached one counts, and of those the one that is out of date.
    End labels and tags carry neither.
    """
    if revision is None and not letters:
        return Standing(Answer.UNKNOWN, _NO_REVISION)
    wanted = letters.strip().upper()
    alike = [card for card in known if (card.revision, card.letters) == (revision, wanted)]
    if not alike:
        return Standing(Answer.UNKNOWN, _tell_unknown(revision, wanted))
    likeliest = min(alike, key=lambda card: (_LIKELIEST.index(card.fate), _is_current(card)))
    return judge(likeliest.printed_fingerprint, likeliest.today_fingerprint, fate=likeliest.fate)


def _is_current(card: KnownCard) -> bool:
    return card.printed_fingerprint == card.today_fingerprint


def _tell_unknown(revision: int | None, letters: str) -> Sentence:
    return Sentence(
        "{card} is not known for this container. Do not rely on it; ask before you open or lift.",
        card=_name(revision, letters),
    )


def _name(revision: int | None, letters: str) -> Sentence:
    """Name the card as it was scanned, but repeat nothing that cannot be a card's."""
    has_letters = len(letters) == NUMBER_OF_LETTERS and set(letters) <= set(LETTERS)
    if revision is None and has_letters:
        return Sentence("A card without a revision with the letters {letters}", letters=letters)
    if revision is None:
        return Sentence("A card without a revision with such letters")
    if has_letters:
        return Sentence(
            "A card of revision {revision} with the letters {letters}",
            revision=revision,
            letters=letters,
        )
    return Sentence("A card of revision {revision} with such letters", revision=revision)
