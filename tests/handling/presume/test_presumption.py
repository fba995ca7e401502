from __future__ import annotations

from dataclasses import replace

import pytest

from service.handling.presume import PRESUMPTIONS
from service.handling.presume.presumption import (
    Presumption,
    Subject,
    from_memory,
    phrases,
    practice,
    published,
)
from service.handling.presume.words import split_words
from service.handling.presume.years import Years, read_years
from service.handling.rule import Evidence, Rule

SAYS = practice("lamps", "Lamps are presumed to hold oil.")
LAMPS = Presumption("oil", SAYS, kinds=phrases("oil lamp, lantern"), materials=phrases("paraffin"))


def subject(name: str, title: str = "", period: str = "", *materials: str) -> Subject:
    """Make the words of a record."""
    words = tuple(split_words(material) for material in materials)
    return Subject(split_words(name), split_words(title), words, read_years(period))


@pytest.mark.parametrize(
    ("words", "is_meant"),
    [
        (subject("oil lamp"), True),
        (subject("", "Two oil lamps"), True),
        (subject("lamp", "Lamp for oil"), False),
        (subject("bottle", "", "", "glass", "paraffin"), True),
        (subject("bottle", "Paraffin"), False),
        (subject("photograph", "Oil lamp on a table"), False),
        (subject("", "Photograph of an oil lamp"), False),
        (subject("oil lamp", "With a photograph of its maker"), True),
        (subject("photograph", "Lamp", "", "paper", "paraffin"), True),
    ],
)
def test_kinds_and_materials_are_told_apart(words: Subject, is_meant: object) -> None:
    """A kind stands in name or title, a material among materials; a likeness holds no oil."""
    assert LAMPS.applies(words) is is_meant


def test_a_likeness_counts_where_the_rule_says_so() -> None:
    """A toy lamp holds oil where toys are meant too."""
    toy = subject("toy", "Oil lamp")
    assert not LAMPS.applies(toy)
    assert replace(LAMPS, likeness=True).applies(toy)


def test_a_rule_by_name_reads_the_title_only_where_there_is_no_name() -> None:
    """What a title mentions is not always what the thing is."""
    by_name = replace(LAMPS, by_name=True)
    assert not by_name.applies(subject("shelf", "Shelf for an oil lamp"))
    assert by_name.applies(subject("", "An oil lamp"))


def test_what_belongs_together_counts_together() -> None:
    """A kind that needs a second word gets it from anywhere in the record, and not without."""
    pair = replace(LAMPS, kinds={}, together=(phrases("lamp"), phrases("oil")))
    assert pair.applies(subject("lamp", "", "", "brass", "oil"))
    assert pair.applies(subject("lamp", "Lamp for oil"))
    assert not pair.applies(subject("lamp", "", "", "brass"))
    assert not pair.applies(subject("can", "Can for oil"))


@pytest.mark.parametrize(
    ("period", "undated", "is_meant"),
    [
        ("1900", True, True),
        ("1901", True, False),
        ("about 1905", True, True),
        ("", True, True),
        ("", False, False),
        ("long ago", False, False),
    ],
)
def test_dates_count_where_they_are_known(period: str, undated: object, is_meant: object) -> None:
    """A date outside the years rules it out; without one the rule says whether it speaks."""
    dated = replace(LAMPS, years=Years(1850, 1900), undated=bool(undated))
    assert dated.applies(subject("lantern", "", period)) is is_meant


def test_words_that_say_another_thing_win() -> None:
    """A word that rules it out may stand anywhere."""
    spared = replace(LAMPS, unless=phrases("electric"))
    assert not spared.applies(subject("lantern", "Lantern, electric"))
    assert not spared.applies(subject("lantern", "", "", "electric parts"))
    assert not spared.applies(subject("electric lantern"))


def test_rules_say_what_stands_behind_them() -> None:
    """Only a published rule names a source."""
    assert published("a", "Says.", "A book") == Rule(
        "presume-a", "Says.", Evidence.PUBLISHED, "A book"
    )
    assert practice("a", "Says.") == Rule("presume-a", "Says.", Evidence.PRACTICE)
    assert from_memory("a", "Says.") == Rule("presume-a", "Says.", Evidence.MEMORY)


FIRST_AND_LAST = {
    # Specimens prepared before 1980: NPS Conserve O Gram on arsenic, September 2000 (quoted in the
    # press); Collection Forum 30 (2016) has use as common before 1970. The cautious one counts.
    "arsenic-taxidermy": (None, 1980),
    "arsenic-herbarium": (None, 1980),
    # 18th and 19th century: Museums Association, guidance on hazards in collections, 2026.
    "mercury-specimens": (1701, 1900),
    # From the 17th century to the 1940s: Parliamentary Archives, A mercurial millinery mystery.
    "mercury-hats": (1601, 1949),
    # In phosphors until 1949: Cleveland Clinic Journal of Medicine, commentary on chemical
    # pneumonia in workers extracting beryllium oxide. Tubes were sold from 1938; 1930 and the year
    # after 1949 are from memory.
    "beryllium": (1930, 1950),
    # Replaced in the 1970s: from memory, no guidance with a date was found. US EPA, Radioactive
    # antiques, names no last year.
    "radium-dials": (None, 1979),
    # From memory.
    "polonium": (1940, None),
    # Mined for trade by 1878: Ingenium, Artifacts and asbestos. Objects made before 2000: National
    # Services Te Paerangi, New asbestos regulations, 2018.
    "asbestos-goods": (1878, 1999),
    # First sold in 1889, none made after 1951: a film maker's leaflet on nitrate film, 2003.
    "nitrate-film-dated": (1889, 1951),
    # No longer common after the 1960s: National Services Te Paerangi, Explosive picric acid found
    # in museum collections. 1870 is from memory.
    "picric-acid-kits": (1870, 1969),
}


def test_the_years_of_presumptions_change_only_on_purpose() -> None:
    """The first and the last year count, the years beside them do not."""
    dated = {one.rule.code.removeprefix("presume-"): one.years for one in PRESUMPTIONS}
    ever = Years(-10_000, 9_999)
    assert {code for code, years in dated.items() if years != ever} == set(FIRST_AND_LAST)
    for code, (first, last) in FIRST_AND_LAST.items():
        assert dated[code].first == (-10_000 if first is None else first), code
        assert dated[code].last == (9_999 if last is None else last), code
