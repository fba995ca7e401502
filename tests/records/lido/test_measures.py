from __future__ import annotations

from collections.abc import Callable

import pytest

from service.records.lido.element import Element, read_blocks
from service.records.lido.measures import Measures, choose_weight, read_measures

Maker = Callable[[str], Element]


def measure(kind: str, value: str, unit: str) -> str:
    """Give one measure."""
    return (
        f"<_measurementsSet><_measurementType>{kind}</_measurementType>"
        f"<_measurementUnit>{unit}</_measurementUnit>"
        f"<_measurementValue>{value}</_measurementValue></_measurementsSet>"
    )


def group(*measures: str, shown: str = "", extent: str = "", qualifier: str = "") -> str:
    """Give one set of measures."""
    tail = f"<_extentMeasurements>{extent}</_extentMeasurements>" if extent else ""
    tail += f"<_qualifierMeasurements>{qualifier}</_qualifierMeasurements>" if qualifier else ""
    display = f"<_displayObjectMeasurements>{shown}</_displayObjectMeasurements>" if shown else ""
    inner = f"<_objectMeasurements>{''.join(measures)}{tail}</_objectMeasurements>"
    return f"<_objectMeasurementsSet>{display}{inner if measures else ''}</_objectMeasurementsSet>"


HEIGHT = measure("height", "12.5", "cm")
WIDTH = measure("width", "8", "cm")
WEIGHT = measure("weight", "640", "g")
SKOS = "<skos:Concept><skos:prefLabel>{}</skos:prefLabel></skos:Concept>"


@pytest.mark.parametrize(
    ("inner", "expected"),
    [
        (group(HEIGHT, WIDTH), Measures(["height 12.5 cm; width 8 cm"])),
        (group(HEIGHT, shown="H 12.5 x W 8 cm"), Measures(["H 12.5 x W 8 cm"])),
        (group(HEIGHT, shown="rather tall"), Measures(["height 12.5 cm"])),
        (group(shown="rather tall"), Measures(["rather tall"])),
        (group(HEIGHT) + group(WIDTH), Measures(["height 12.5 cm", "width 8 cm"])),
        (group(HEIGHT, extent="lid"), Measures(["lid height 12.5 cm"])),
        (group(HEIGHT, extent="overall"), Measures(["height 12.5 cm"])),
        (group(measure(SKOS.format("height"), "3", SKOS.format("mm"))), Measures(["height 3 mm"])),
        (group(HEIGHT, WEIGHT), Measures(["height 12.5 cm"], ["640 g"])),
        (group(WEIGHT, qualifier="approximate"), Measures(weights=["ca. 640 g"])),
        (group(WEIGHT, extent="lid"), Measures(weights_of_parts=["lid 640 g"])),
        (group(measure("Gewicht", "0,64", "kg")), Measures(weights=["0,64 kg"])),
        (group(WEIGHT, shown="640 g"), Measures(weights=["640 g", "640 g"])),
        (group(WEIGHT, shown="weight: 0.64 kg"), Measures(weights=["0.64 kg", "640 g"])),
        (group(shown="H 3 cm; Weight: 1.2 kg"), Measures(["H 3 cm"], ["1.2 kg"])),
        (group(shown="weight 1.2 kg"), Measures(weights=["1.2 kg"])),
        (group(measure("number of parts", "3", "pieces")), Measures(counts=["3"])),
        (group(measure("weight", "", "g")), Measures()),
        (group(HEIGHT).replace("Set>", "Set _type='requirement'>", 1), Measures()),
        ("", Measures()),
    ],
)
def test_measures_are_sorted(make_record: Maker, inner: str, expected: Measures) -> None:
    """Sizes, weights and counts are told apart, whether shown as text or given as values."""
    record = make_record(
        "<_descriptiveMetadata><_objectIdentificationWrap><_objectMeasurementsWrap>"
        f"{inner}</_objectMeasurementsWrap></_objectIdentificationWrap></_descriptiveMetadata>"
    )
    assert read_measures(read_blocks(record, "descriptiveMetadata")) == expected


@pytest.mark.parametrize(
    ("measures", "weight", "trouble"),
    [
        (Measures(weights=["640 g"]), "640 g", ""),
        (Measures(weights=["1.2 kg", "1200 g", "2 lb 10.3 oz"]), "1.2 kg", ""),
        (Measures(weights=["12"]), "12", ""),
        (Measures(weights=["1.2 kg", "12 kg"]), "", "different weights"),
        (Measures(weights_of_parts=["lid 300 g"]), "", "not the weight of the whole"),
        (Measures(weights=["2 kg"], weights_of_parts=["lid 300 g"]), "2 kg", ""),
        (Measures(), "", ""),
    ],
    ids=["one", "units", "no unit", "contradiction", "part", "whole and part", "none"],
)
def test_weight_is_never_guessed(measures: Measures, weight: str, trouble: str) -> None:
    """Only the weight of the whole counts, and none where two are said."""
    chosen, said = choose_weight(measures)
    assert chosen == weight
    assert trouble in (said or "")
    assert bool(trouble) == bool(said)
