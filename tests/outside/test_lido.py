"""LIDO: the elements of our sample, and where each may stand.

Source: LIDO Schema 1.1 (lido-schema.org; ICOM CIDOC working group, 20 December 2021; CC BY 4.0), as
published: each element with those that may stand in it, in their order. Only those that objects
need are listed.
"""

from __future__ import annotations

from xml.etree import ElementTree as ET

import pytest

from service.records.lido.export.write import write_lido
from service.records.read_tables import read_tables
from service.records.record import Collection, ObjectRecord
from tests.contracts.sources import ROOT

SAMPLE = ROOT / "sample_records" / "lido_export" / "objects.xml"
NAMESPACE = "{http://www.lido-schema.org}"

CHILDREN = {
    "lidoWrap": "lido",
    "lido": "lidoRecID objectPublishedID category applicationProfile"
    " descriptiveMetadata administrativeMetadata",
    "category": "conceptID term",
    "descriptiveMetadata": "objectClassificationWrap objectIdentificationWrap eventWrap"
    " objectRelationWrap",
    "objectClassificationWrap": "objectWorkTypeWrap classificationWrap",
    "objectWorkTypeWrap": "objectWorkType",
    "objectWorkType": "conceptID term",
    "objectIdentificationWrap": "titleWrap inscriptionsWrap repositoryWrap displayStateEditionWrap"
    " objectDescriptionWrap objectMeasurementsWrap objectMaterialsTechWrap",
    "titleWrap": "titleSet",
    "titleSet": "appellationValue sourceAppellation",
    "objectDescriptionWrap": "objectDescriptionSet",
    "objectDescriptionSet": "descriptiveNoteID descriptiveNoteValue sourceDescriptiveNote",
    "objectMaterialsTechWrap": "objectMaterialsTechSet",
    "objectMaterialsTechSet": "displayMaterialsTech materialsTech",
    "repositoryWrap": "repositorySet",
    "repositorySet": "displayRepository repositoryName workID repositoryLocation",
    "repositoryName": "legalBodyID legalBodyName legalBodyWeblink",
    "legalBodyName": "appellationValue sourceAppellation",
    "objectMeasurementsWrap": "objectMeasurementsSet",
    "objectMeasurementsSet": "displayObjectMeasurements objectMeasurements",
    "objectMeasurements": "measurementsSet extentMeasurements qualifierMeasurements"
    " formatMeasurements shapeMeasurements scaleMeasurements",
    "measurementsSet": "measurementType measurementUnit measurementValue",
    "eventWrap": "eventSet",
    "eventSet": "displayEvent event",
    "event": "eventID eventType roleInEvent eventName eventActor culture eventDate periodName"
    " eventPlace eventMethod eventMaterialsTech eventObjectMeasurements thingPresent"
    " relatedEventSet eventDescriptionSet",
    "eventType": "conceptID term",
    "eventDate": "displayDate date",
    "date": "earliestDate latestDate",
    "eventMaterialsTech": "displayMaterialsTech materialsTech",
    "materialsTech": "termMaterialsTech extentMaterialsTech sourceMaterialsTech",
    "termMaterialsTech": "conceptID term",
    "administrativeMetadata": "rightsWorkWrap recordWrap resourceWrap",
    "rightsWorkWrap": "rightsWorkSet",
    "rightsWorkSet": "rightsType rightsDate rightsHolder creditLine",
    "recordWrap": "recordID recordType recordSource recordRights recordInfoSet",
    "recordType": "conceptID term",
    "recordSource": "legalBodyID legalBodyName legalBodyWeblink",
    "recordInfoSet": "recordInfoID recordInfoLink recordMetadataDate",
    "resourceWrap": "resourceSet",
    "resourceSet": "resourceID resourceRepresentation resourceType resourceRelType"
    " resourcePerspective resourceDescription resourceDateTaken resourceSource rightsResource",
    "resourcePerspective": "conceptID term",
    "resourceRepresentation": "linkResource resourceMeasurementsSet",
}

# What may not be absent, and elements that must say their type.
REQUIRED = {
    "lido": "lidoRecID descriptiveMetadata administrativeMetadata",
    "descriptiveMetadata": "objectClassificationWrap objectIdentificationWrap",
    "objectClassificationWrap": "objectWorkTypeWrap",
    "objectWorkTypeWrap": "objectWorkType",
    "objectIdentificationWrap": "titleWrap",
    "titleWrap": "titleSet",
    "titleSet": "appellationValue",
    "administrativeMetadata": "recordWrap",
    "recordWrap": "recordID recordType recordSource",
    "resourceRepresentation": "linkResource",
    "event": "eventType",
    "measurementsSet": "measurementType measurementUnit measurementValue",
}
TYPED = ("lidoRecID", "recordID", "conceptID", "legalBodyID")

# The attributes that ours have, by the elements that may have them.
ATTRIBUTES = {
    "type": (
        *TYPED,
        "workID",
        "objectDescriptionSet",
        "repositorySet",
        "resourceRepresentation",
        "termMaterialsTech",
    ),
    "pref": ("appellationValue",),
    "addedSearchTerm": ("term",),
    "formatResource": ("linkResource", "recordInfoLink"),
    "lang": (
        "administrativeMetadata",
        "appellationValue",
        "descriptiveMetadata",
        "displayDate",
        "displayMaterialsTech",
        "displayObjectMeasurements",
        "measurementType",
        "term",
    ),
}
LANGUAGE = "{http://www.w3.org/XML/1998/namespace}lang"
DEMO = ROOT / "sample_records" / "port_merrow"


@pytest.mark.parametrize("bare", [False, True], ids=["demo", "number alone"])
def test_our_export_is_built_as_the_standard_says(*, bare: bool) -> None:
    """Elements of a written file stand in their order, and none that must be there is absent."""
    files = {path.name: path.read_bytes() for path in DEMO.iterdir() if path.is_file()}
    collection = Collection(objects=(ObjectRecord("1"),)) if bare else read_tables(files)
    root = ET.fromstring(b"".join(write_lido(collection)))  # noqa: S314 - a file of our own
    check(root)


def test_our_sample_is_built_as_the_standard_says() -> None:
    """Every element of the sample may stand where it stands."""
    check(ET.parse(SAMPLE).getroot())  # noqa: S314 - a file of our own


def check(root: ET.Element) -> None:
    """Hold a file against the schema: what stands where, in what order, and what must be there."""
    assert name_of(root) == "lidoWrap"
    assert len(root)
    for element in root.iter():
        names = [name_of(child) for child in element]
        order = CHILDREN.get(name_of(element), "").split()
        assert names == sorted(names, key=order.index)
        assert set(REQUIRED.get(name_of(element), "").split()) <= set(names)
        assert name_of(element) not in TYPED or element.get(f"{NAMESPACE}type")
        assert not name_of(element).endswith("Metadata") or element.get(LANGUAGE)
        for attribute in element.attrib:
            assert name_of(element) in ATTRIBUTES[attribute.rpartition("}")[2]]


def name_of(element: ET.Element) -> str:
    """Give the name of an element of LIDO's namespace."""
    assert element.tag.startswith(NAMESPACE)
    return element.tag.removeprefix(NAMESPACE)
