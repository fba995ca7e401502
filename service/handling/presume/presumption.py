"""One presumption: which records it is about, which hazard it adds, and the rule behind it."""

from __future__ import annotations

from dataclasses import dataclass, field

from service.handling.presume.words import Phrases, Words, has_phrase, make_phrases
from service.handling.presume.years import Years
from service.handling.rule import Evidence, Rule

EVER = Years(-10_000, 9_999)

_LIKENESSES = (
    "advertisement, badge, book, booklet, brochure, button, catalogue, certificate, chart, "
    "document, drawing, engraving, etching, figurine, game, invoice, jigsaw, leaflet, letter, "
    "licence, lithograph, magazine, manual, map, medal, model, newspaper, pamphlet, painting, "
    "photo, photograph, plan, postcard, poster, print, programme, receipt, replica, "
    "reproduction, sculpture, sheet music, sketch, statue, statuette, stamp, toy, watercolour"
)


def phrases(*texts: str) -> Phrases:
    """Take lists of phrases, divided by commas."""
    return make_phrases(text for some in texts for text in some.split(","))


LIKENESSES = phrases(_LIKENESSES)
"""What shows or copies a thing, so that a word for the thing does not mean the thing itself."""


@dataclass(frozen=True, slots=True)
class Subject:
    """What a record says of itself, as words; each material apart."""

    name: Words
    title: Words
    materials: tuple[Words, ...]
    years: Years | None

    @property
    def is_likeness(self) -> bool:
        """Whether the thing only shows or copies another, by its name, else by its title."""
        return has_phrase(self.name or self.title, LIKENESSES)


@dataclass(frozen=True, slots=True)
class Presumption:
    """Adds `hazard` where name or title is of a kind, or where a material is named.

    Attributes:
        hazard: Code of the hazard.
        rule: What it says, with its source.
        kinds: Phrases that say of a name or title that the thing is of this kind.
        materials: Phrases that say it of a material.
        together: Kinds that count only where a word of the second group stands with them, in name,
            title or materials.
        unless: Phrases that, anywhere in the record, say that it is another thing.
        not_before: Words that, right after a kind or material, make it another thing.
        years: When such things were made; one that may be from then counts.
        undated: Whether things without a date count.
        by_name: Whether the title counts only where the record has no name.
        likeness: Whether a likeness, toy or model counts as well.
        answered_by: Hazards that, confirmed, answer the same question.
    """

    hazard: str
    rule: Rule
    kinds: Phrases = field(default_factory=dict)
    materials: Phrases = field(default_factory=dict)
    together: tuple[Phrases, Phrases] = field(default_factory=lambda: ({}, {}))
    unless: Phrases = field(default_factory=dict)
    not_before: Phrases = field(default_factory=dict)
    years: Years = EVER
    undated: bool = True
    by_name: bool = False
    likeness: bool = False
    answered_by: tuple[str, ...] = ()

    def applies(self, subject: Subject) -> bool:
        """Tell whether a record is one of those that this is about."""
        fields = (subject.name, subject.title, *subject.materials)
        return (
            self._is_of_then(subject.years)
            and (self._is_made_of(subject) or self._is_of_kind(subject))
            and not any(has_phrase(words, self.unless) for words in fields)
        )

    def _is_of_then(self, years: Years | None) -> bool:
        return self.undated if years is None else self.years.meets(years)

    def _is_made_of(self, subject: Subject) -> bool:
        return any(
            has_phrase(material, self.materials, not_before=self.not_before)
            for material in subject.materials
        )

    def _is_of_kind(self, subject: Subject) -> bool:
        if subject.is_likeness and not self.likeness:
            return False
        named = [subject.name or subject.title] if self.by_name else [subject.name, subject.title]
        kinds, beside = self.together
        if any(has_phrase(words, self.kinds, not_before=self.not_before) for words in named):
            return True
        return any(has_phrase(words, kinds, not_before=self.not_before) for words in named) and any(
            has_phrase(words, beside) for words in (*named, *subject.materials)
        )


def published(code: str, says: str, source: str) -> Rule:
    """Make the rule of a presumption that published guidance makes."""
    return Rule(f"presume-{code}", says, Evidence.PUBLISHED, source)


def practice(code: str, says: str) -> Rule:
    """Make the rule of a presumption that is common practice, no source."""
    return Rule(f"presume-{code}", says, Evidence.PRACTICE)


def from_memory(code: str, says: str) -> Rule:
    """Make the rule of a presumption whose source was not seen: from memory."""
    return Rule(f"presume-{code}", says, Evidence.MEMORY)
