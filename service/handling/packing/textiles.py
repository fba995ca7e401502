"""Checks how textiles are kept: pins, metal against cloth, folds, and what hangs on a rail."""

from __future__ import annotations

import re
from collections.abc import Iterator

from service.contents.packing import PackedObject, Packing
from service.findings import Finding
from service.handling.hanging.assess import HangWay, assess_hanging
from service.handling.materials import METALS, find_material, is_textile
from service.handling.packing import rules
from service.handling.packing.report import Known, name_some, report
from service.handling.phrases import find_clause, find_phrase
from service.records.record import ContainerKind, ObjectRecord
from service.sentence import Sentence

_PINS = ("pin", "pins", "staple", "staples", "paper clip", "paper clips", "tacks")
_NO_PINS = ("case", "cushion", "remove")
_CORRODING = ("corroded", "corroding", "corrosion", "rust", "rusty", "rusting", "verdigris")
_APART = (
    "tissue", "bag", "bagged", "box", "boxed", "sleeve", "wrapped", "foam", "interleaved",
    "isolated", "case", "polyester", "polyethylene",
)  # fmt: skip
_FOLDED = ("folded", "fold", "folds")
_PADDED = ("padded", "padding", "tissue", "roll", "rolls", "rolled", "wadding", "interleaved")
_UNPADDED = ("unpadded", "without padding", "not padded", "no padding")
_PART = re.compile(r"\bpart (\w+)", re.IGNORECASE)


def check_pins(packing: Packing, _known: Known) -> Iterator[Finding]:
    """Report pins and staples that the record finds in a textile, or in the parts that lie here."""
    for packed in packing.contents:
        if not is_textile(packed.record):
            continue
        said = (find_clause(text, _PINS, unless=_NO_PINS) for text in _texts_here(packed))
        clause = next(filter(None, said), "")
        if clause:
            what = Sentence(
                "{object_number} is of cloth, and its record says: {clause}.",
                object_number=packed.record.object_number,
                clause=clause,
            )
            yield report(rules.PINS, packing, what, packed=packed)


def _texts_here(packed: PackedObject) -> Iterator[str]:
    """Give what is said of the object, without what is said of parts that lie elsewhere."""
    record, here = packed.record, packed.place.parts
    yield packed.place.note
    yield from (part.name for part in record.parts if not here or part.mark in here)
    for text in (record.condition, record.handling_notes, *(one.note for one in record.hazards)):
        parts = _PART.findall(text)
        if not here or not parts or set(parts).intersection(here):
            yield text


def check_metal(packing: Packing, _known: Known) -> Iterator[Finding]:
    """Report corroding metal on cloth, and metal in one compartment with cloth, nothing between."""
    for packed in packing.contents:
        record = packed.record
        if is_textile(record) and (clause := _find_corrosion(record)):
            what = Sentence(
                "{object_number} is of cloth, and its condition says: {clause}.",
                object_number=record.object_number,
                clause=clause,
            )
            yield report(rules.METAL_ON_TEXTILE, packing, what, packed=packed)
        if is_textile(record) and _may_touch(packed):
            metal = [
                other.record.object_number
                for other in packing.contents
                if _is_metal(other.record) and _may_touch(other) and _share_place(packed, other)
            ]
            if metal:
                place = packed.place.compartment
                what = Sentence(
                    "{object_number} lies with {metal} of metal in {place}.",
                    object_number=record.object_number,
                    metal=name_some(metal),
                    place=place,
                )
                yield report(
                    rules.METAL_BESIDE_TEXTILE,
                    packing,
                    what,
                    packed=packed,
                    code=rules.METAL_ON_TEXTILE.code,
                )


def _find_corrosion(record: ObjectRecord) -> str:
    is_there = any(find_material(record.materials, metal) for metal in METALS)
    return find_clause(record.condition, _CORRODING, unless=_APART) if is_there else ""


def _is_metal(record: ObjectRecord) -> bool:
    return any(find_material(record.materials[:1], metal) for metal in METALS)


def _may_touch(packed: PackedObject) -> bool:
    return bool(packed.place.compartment) and not find_phrase(packed.place.note, _APART)


def _share_place(one: PackedObject, other: PackedObject) -> bool:
    return (one.place.layer, one.place.compartment) == (other.place.layer, other.place.compartment)


def check_folds(packing: Packing, _known: Known) -> Iterator[Finding]:
    """Report folds against the record, and folds of cloth that are not padded."""
    for packed in packing.contents:
        note, record = packed.place.note, packed.record
        must_be_flat = {"do-not-fold", "keep-flat"}.intersection(record.cautions)
        what = Sentence(
            "{object_number} is noted as lying so: {note}.",
            object_number=record.object_number,
            note=note,
        )
        if must_be_flat and find_clause(note, _FOLDED):
            yield report(rules.FOLDED, packing, what, packed=packed)
        elif is_textile(record) and _is_unpadded(note):
            yield report(rules.UNPADDED_FOLD, packing, what, packed=packed)


def _is_unpadded(note: str) -> bool:
    if find_phrase(note, _UNPADDED):
        return bool(find_phrase(note, _FOLDED))
    return bool(find_clause(note, _FOLDED, unless=_PADDED))


def check_hung(packing: Packing, _known: Known) -> Iterator[Finding]:
    """Report what hangs in a garment cover although its record speaks against it."""
    if packing.container.kind is not ContainerKind.GARMENT_COVER:
        return
    for packed in packing.everything:
        advice = assess_hanging(packed.record)
        if advice.way is HangWay.BOX_FLAT:
            number = packed.record.object_number
            what = Sentence(
                "{number} hangs in its cover; recorded: {reasons}.",
                number=number,
                reasons=", ".join(advice.reasons),
            )
            yield report(advice.rules, packing, what, packed=packed, code="hung-against-advice")
