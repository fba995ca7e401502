"""Adds to records the hazards that guidance presumes; what is recorded always wins.

A presumption never changes a recorded hazard, in whatever state it is, and is itself never more
than presumed. Where no rule speaks nothing is added: that says nothing of the object.
"""

from __future__ import annotations

from collections import defaultdict
from dataclasses import replace

from service.findings import Finding, Where, make_finding
from service.handling.hazards import find_hazard
from service.handling.presume.presumption import Presumption, Subject
from service.handling.presume.rules_arms import ARMS
from service.handling.presume.rules_film import FILM
from service.handling.presume.rules_metals import METALS
from service.handling.presume.rules_radiation import RADIATION
from service.handling.presume.rules_specimens import SPECIMENS
from service.handling.presume.rules_vessels import VESSELS
from service.handling.presume.words import singulars, split_words
from service.handling.presume.years import read_years
from service.handling.rule import Rule
from service.records.record import Collection, Hazard, HazardState, ObjectRecord
from service.sentence import Sentence

PRESUMPTIONS: tuple[Presumption, ...] = (
    *SPECIMENS,
    *METALS,
    *RADIATION,
    *FILM,
    *VESSELS,
    *ARMS,
)
RULES: tuple[Rule, ...] = tuple(one.rule for one in PRESUMPTIONS)


def presume_hazards(collection: Collection) -> tuple[Collection, tuple[Finding, ...]]:
    """Add presumed hazards to every object and tell of each, unless the museum wants none."""
    if not collection.museum.presume_hazards:
        return collection, ()
    findings: list[Finding] = []
    objects = []
    for record in collection.objects:
        presumed = presume_for(record)
        findings += (_tell(record, one) for one in presumed)
        added = tuple(_make_hazard(one) for one in presumed)
        objects.append(replace(record, hazards=record.hazards + added) if added else record)
    return replace(collection, objects=tuple(objects)), tuple(findings)


def presume_for(record: ObjectRecord) -> tuple[Presumption, ...]:
    """Find what is presumed of one object beside what is recorded, each hazard once."""
    name, title = split_words(record.object_name), split_words(record.title)
    materials = tuple(split_words(material) for material in record.materials)
    words = {
        first for some in (name, title, *materials) for word in some for first in singulars(word)
    }
    likely = {index for word in words for index in _BY_FIRST_WORD.get(word, ())}
    if not likely:
        return ()
    subject = Subject(name, title, materials, read_years(record.period))
    found: dict[str, Presumption] = {}
    for index in sorted(likely):
        one = PRESUMPTIONS[index]
        if one.hazard not in found and not _is_answered(record, one) and one.applies(subject):
            found[one.hazard] = one
    return tuple(found.values())


def _is_answered(record: ObjectRecord, one: Presumption) -> bool:
    return any(
        hazard.code == one.hazard
        or (hazard.code in one.answered_by and hazard.state is HazardState.CONFIRMED)
        for hazard in record.hazards
    )


def _make_hazard(one: Presumption) -> Hazard:
    note = f"{one.rule.says.rstrip('.')} ({one.rule.code})"
    return Hazard(one.hazard, HazardState.PRESUMED, note=note)


def _tell(record: ObjectRecord, one: Presumption) -> Finding:
    number, name = record.object_number, find_hazard(one.hazard).name
    message = Sentence(
        "{name}, presumed of {number}, is not recorded. {says} ({code})",
        name=Sentence(name),
        number=number,
        says=Sentence(one.rule.says),
        code=one.rule.code,
    )
    return make_finding("hazard-presumed", Where(object_number=number), message)


def _index_first_words() -> dict[str, tuple[int, ...]]:
    """File each presumption under the words with which its phrases begin."""
    filed: dict[str, set[int]] = defaultdict(set)
    for index, one in enumerate(PRESUMPTIONS):
        for word in (*one.kinds, *one.materials, *one.together[0]):
            filed[word].add(index)
    return {word: tuple(sorted(indexes)) for word, indexes in filed.items()}


_BY_FIRST_WORD = _index_first_words()
