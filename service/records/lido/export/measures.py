"""Sizes, weight and number of parts of an object as sets of measures."""

from __future__ import annotations

from service.records.cells.dimensions import parse_dimensions
from service.records.lido.export.tree import Tree, add
from service.records.measures import Measure
from service.records.record import ObjectRecord, Weight, WeightBasis

_SET = "objectMeasurementsSet"


def write_measures(identification: Tree, record: ObjectRecord) -> None:
    """Add what a record says of its measures, each thing in a set of its own."""
    if not (record.dimensions_text or record.dimensions or _has_others(record)):
        return
    wrap = add(identification, "objectMeasurementsWrap")
    if record.dimensions_text or record.dimensions:
        _write_sizes(wrap, record)
    if record.weight or record.weight_text:
        _write_weight(wrap, record.weight, record.weight_text)
    if record.number_of_parts is not None:
        group = add(wrap, f"{_SET}/objectMeasurements")
        _write_one(group, "number of parts", str(record.number_of_parts), "pieces")


def _has_others(record: ObjectRecord) -> bool:
    return bool(record.weight or record.weight_text) or record.number_of_parts is not None


def _write_sizes(wrap: Tree, record: ObjectRecord) -> None:
    """Write the text; and the measures, unless they would say only half of it."""
    each = add(wrap, _SET)
    text = record.dimensions_text or "; ".join(map(_say, record.dimensions))
    add(each, "displayObjectMeasurements", text)
    if record.dimensions and not parse_dimensions(text).unread:
        group = add(each, "objectMeasurements")
        for measure in record.dimensions:
            _write_size(group, measure)


def _write_size(group: Tree, measure: Measure) -> None:
    _write_one(group, measure.label or "size", write_decimal(measure.length_mm), "mm")


def _say(measure: Measure) -> str:
    return f"{measure.label} {write_decimal(measure.length_mm)} mm".strip()


def _write_weight(wrap: Tree, weight: Weight | None, text: str) -> None:
    each = add(wrap, _SET)
    if text:
        add(each, "displayObjectMeasurements", f"weight: {text}")
    if weight is None:
        return
    group = add(each, "objectMeasurements")
    _write_one(group, "weight", write_decimal(weight.weight_g), "g")
    if weight.basis is WeightBasis.ESTIMATED:
        add(group, "qualifierMeasurements", "estimate")


def _write_one(group: Tree, kind: str, value: str, unit: str) -> None:
    each = add(group, "measurementsSet")
    add(each, "measurementType", kind)
    add(each, "measurementUnit", unit)
    add(each, "measurementValue", value)


def write_decimal(value: float) -> str:
    """Write a number without exponent, to a millionth, with no more digits than it has."""
    return f"{value:.6f}".rstrip("0").rstrip(".")
