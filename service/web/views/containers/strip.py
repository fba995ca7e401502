"""What must be known before a container is lifted or opened, in full words."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from service.cards.compose.warn import STATE_ORDER, gather_cautions, warn_outside
from service.cards.parts import Handling
from service.cards.words import write_questions
from service.contents.packing import PackedObject
from service.handling.cautions import find_caution
from service.handling.hazards import HazardEntry, find_hazard, word_hazard
from service.keeping.containers.look import ContainerLook
from service.records.record import HazardState
from service.web.views.containers.alike import ShownFinding, show_few


@dataclass(frozen=True, slots=True)
class ShownHazard:
    """One hazard in one state, its first precautions, whom to ask, and the objects that have it."""

    entry: HazardEntry
    state: HazardState
    ask: str
    numbers: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ShownCaution:
    """One caution and the objects that have it."""

    mark: str
    heading: str
    numbers: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Strip:
    """The handling strip of a page: as on the card, but with the full words of every hazard."""

    hazards: tuple[ShownHazard, ...]
    cautions: tuple[ShownCaution, ...]
    outside: Handling
    questions: str
    findings: tuple[ShownFinding, ...]

    @property
    def is_silent(self) -> bool:
        """Whether the records say nothing of hazards and cautions, which proves nothing."""
        return not self.hazards and not self.cautions


def show_strip(look: ContainerLook) -> Strip:
    """Gather the strip of a container."""
    everything = look.packing.everything
    return Strip(
        hazards=tuple(_gather(everything, look)),
        cautions=tuple(_gather_cautions(everything)),
        outside=warn_outside(look.packing, look.museum),
        questions=write_questions(look.packing.container.questions, look.museum.questions),
        findings=tuple(show_few(look.findings)),
    )


def _gather_cautions(everything: tuple[PackedObject, ...]) -> Iterator[ShownCaution]:
    for warn in gather_cautions(everything):
        numbers = [
            packed.record.object_number
            for packed in everything
            if warn.heading in {find_caution(code).name for code in packed.record.cautions}
        ]
        yield ShownCaution(warn.mark, warn.heading, tuple(dict.fromkeys(numbers)))


def _gather(everything: tuple[PackedObject, ...], look: ContainerLook) -> list[ShownHazard]:
    """Merge equal hazards of several objects, the most urgent and best known first."""
    found: dict[tuple[str, HazardState, str], dict[str, None]] = {}
    entries: dict[tuple[str, HazardState, str], HazardEntry] = {}
    for packed in everything:
        for hazard in packed.record.hazards:
            entry = word_hazard(hazard)
            key = (hazard.code, hazard.state, entry.instruction)
            entries[key] = entry
            found.setdefault(key, {})[packed.record.object_number] = None
    shown = [
        ShownHazard(
            entries[key],
            key[1],
            find_hazard(key[0]).consult.in_region(look.museum.region),
            tuple(numbers),
        )
        for key, numbers in found.items()
    ]
    return sorted(shown, key=lambda one: (one.entry.urgency, STATE_ORDER.index(one.state)))
