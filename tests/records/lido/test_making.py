from __future__ import annotations

from collections.abc import Callable

import pytest

from service.records.lido.element import Element, read_blocks
from service.records.lido.making import read_materials, read_periods

Maker = Callable[[str], Element]
PRODUCTION = "<_term>Production</_term>"
CONCEPT = "<_conceptID>http://terminology.lido-schema.org/lido00007</_conceptID>"


def event(inner: str, *, kind: str = PRODUCTION) -> str:
    """Put an event into its place."""
    return (
        "<_descriptiveMetadata xml:lang='en'><_eventWrap><_eventSet><_event>"
        f"<_eventType>{kind}</_eventType>{inner}"
        "</_event></_eventSet></_eventWrap></_descriptiveMetadata>"
    )


def date(inner: str) -> str:
    """Put a date into its place."""
    return f"<_eventDate>{inner}</_eventDate>"


RANGE = "<_date><_earliestDate>1880</_earliestDate><_latestDate>1890</_latestDate></_date>"


@pytest.mark.parametrize(
    ("inner", "expected"),
    [
        (event(date(f"<_displayDate>about 1885</_displayDate>{RANGE}")), ["about 1885"]),
        (event(date(RANGE)), ["1880 to 1890"]),
        (event(date(RANGE.replace("1890", "1880"))), ["1880"]),
        (event(date("<_date><_latestDate>1890</_latestDate></_date>")), ["1890"]),
        (event(date(RANGE), kind=CONCEPT), ["1880 to 1890"]),
        (event(date(RANGE), kind="<_term>Herstellung</_term>"), ["1880 to 1890"]),
        (event(date(RANGE), kind="<_term>Acquisition</_term>"), []),
        (event(""), []),
    ],
    ids=["shown", "range", "year", "end", "concept", "German", "other event", "none"],
)
def test_period_is_that_of_making(make_record: Maker, inner: str, expected: list[str]) -> None:
    """The date of making is read as shown, else as earliest and latest; other events never."""
    assert read_periods(read_blocks(make_record(inner), "descriptiveMetadata")) == expected


def test_two_dates_are_both_told(make_record: Maker) -> None:
    """Two makings with two dates come out both, so that a person can be asked."""
    inner = event(date("<_displayDate>1880</_displayDate>")).replace(
        "</_eventSet>",
        f"</_eventSet><_eventSet><_event><_eventType>{PRODUCTION}</_eventType>"
        "<_eventDate><_displayDate>1910</_displayDate></_eventDate></_event></_eventSet>",
    )
    assert read_periods(read_blocks(make_record(inner), "descriptiveMetadata")) == ["1880", "1910"]


def term(word: str, kind: str = "") -> str:
    """Give a term of material or technique."""
    attribute = f' _type="{kind}"' if kind else ""
    return f"<_termMaterialsTech{attribute}><_term>{word}</_term></_termMaterialsTech>"


def materials(*terms: str, shown: str = "") -> str:
    """Put materials into the event of making."""
    display = f"<_displayMaterialsTech>{shown}</_displayMaterialsTech>" if shown else ""
    inner = f"{display}<_materialsTech>{''.join(terms)}</_materialsTech>"
    return event(f"<_eventMaterialsTech>{inner}</_eventMaterialsTech>")


OF_THE_OBJECT = (
    "<_descriptiveMetadata><_objectIdentificationWrap><_objectMaterialsTechWrap>"
    "<_objectMaterialsTechSet><_displayMaterialsTech>silk</_displayMaterialsTech>"
    "</_objectMaterialsTechSet></_objectMaterialsTechWrap></_objectIdentificationWrap>"
    "</_descriptiveMetadata>"
)
LIDO_TERM = "http://terminology.lido-schema.org/lido00"


@pytest.mark.parametrize(
    ("inner", "expected"),
    [
        (materials(term("elm", "material"), term("turning", "technique")), ("elm",)),
        (materials(term("elm", f"{LIDO_TERM}132"), term("x", f"{LIDO_TERM}131")), ("elm",)),
        (materials(term("elm", "Material"), term("drehen", "Technik"), shown="x"), ("elm",)),
        (materials(term("elm"), term("turned"), shown="turned elm"), ("turned elm",)),
        (materials(term("elm"), term("iron"), term("elm")), ("elm", "iron")),
        (OF_THE_OBJECT, ("silk",)),
        (event(""), ()),
    ],
    ids=["typed", "concepts", "German", "shown", "untyped", "of the object (1.1)", "none"],
)
def test_materials(make_record: Maker, inner: str, expected: tuple[str, ...]) -> None:
    """Terms said to be materials win over the shown text, and that over terms of any kind."""
    assert read_materials(read_blocks(make_record(inner), "descriptiveMetadata")) == expected
