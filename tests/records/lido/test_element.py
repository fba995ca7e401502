from __future__ import annotations

from collections.abc import Callable

import pytest

from service.records.lido.element import (
    Element,
    find_all,
    first_text,
    is_preferred,
    read_attribute,
    read_blocks,
    read_term,
    read_text,
    texts_in_one_language,
)

Maker = Callable[[str], Element]


@pytest.mark.parametrize(
    ("inner", "inherited", "expected"),
    [
        ('<_t xml:lang="de">Krug</_t><_t xml:lang="en">Jug</_t>', "", ["Jug"]),
        ('<_t xml:lang="de">Krug</_t><_t xml:lang="en-GB">Jug</_t>', "", ["Jug"]),
        ('<_t xml:lang="de">Krug</_t><_t>Jug</_t>', "en", ["Jug"]),
        ('<_t xml:lang="cy">Jwg</_t><_t xml:lang="de">Krug</_t>', "", ["Jwg"]),
        ("<_t>Jug</_t><_t>Lid</_t><_t>Jug</_t>", "", ["Jug", "Lid"]),
        ("<_t> </_t><_t/>", "", []),
    ],
    ids=["en", "en-GB", "inherited", "first", "each once", "empty"],
)
def test_english_comes_first_then_the_first(
    make_record: Maker, inner: str, inherited: str, expected: list[str]
) -> None:
    """Texts of one language are kept and those of others left out."""
    elements = find_all(make_record(inner), "t")
    assert texts_in_one_language(elements, inherited) == expected
    assert first_text(elements, inherited) == (expected[0] if expected else "")


@pytest.mark.parametrize(
    ("inner", "expected"),
    [
        ("<_c><_term>jug</_term></_c>", "jug"),
        ('<_c><_term _addedSearchTerm="yes">vessel</_term><_term>jug</_term></_c>', "jug"),
        (
            '<_c><_term _pref="alternate">pot</_term><_term _pref="preferred">jug</_term></_c>',
            "jug",
        ),
        ("<_c><skos:Concept><skos:prefLabel>jug</skos:prefLabel></skos:Concept></_c>", "jug"),
        ("<_c>\n  jug \n with lid</_c>", "jug with lid"),
        ("<_c><_conceptID>7</_conceptID></_c>", ""),
    ],
    ids=["term", "search term", "preferred", "SKOS (1.1)", "text", "none"],
)
def test_term_of_a_concept(make_record: Maker, inner: str, expected: str) -> None:
    """A concept's word is found in each of the forms the two versions have for it."""
    assert read_term(find_all(make_record(inner), "c")[0], "") == expected


def test_attributes_with_and_without_namespace(make_record: Maker) -> None:
    """Exports that forget the namespace of an attribute are read all the same."""
    with_it, without = find_all(make_record('<_a _type=" x "/><_a type="x"/>'), "a")
    assert read_attribute(with_it, "type") == read_attribute(without, "type") == "x"
    assert read_attribute(with_it, "pref") == ""


def test_text_is_one_line(make_record: Maker) -> None:
    """The blanks of a file's layout are no part of a text."""
    assert read_text(find_all(make_record("<_a>\n  a\n  b\n</_a>"), "a")[0]) == "a b"


def test_preference_by_word_and_by_concept(make_record: Maker) -> None:
    """Version 1.0 says preferred by a word, 1.1 by the address of a concept."""
    prefix = "http://terminology.lido-schema.org/"
    inner = f'<_a/><_a _pref="preferred"/><_a _pref="{prefix}lido00169"/><_a _pref="alternate"/>'
    found = find_all(make_record(inner), "a")
    assert [is_preferred(element) for element in found] == [True, True, True, False]


def test_english_block_leads(make_record: Maker) -> None:
    """Of blocks in several languages the English one is asked first."""
    inner = '<_d xml:lang="de"/><_d xml:lang="en"/><_d xml:lang="cy"/>'
    assert [block.language for block in read_blocks(make_record(inner), "d")] == ["en", "de", "cy"]
