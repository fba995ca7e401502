from __future__ import annotations

from collections.abc import Callable

import pytest

from service.records.lido.element import Element, read_blocks
from service.records.lido.identity import (
    Numbers,
    read_address,
    read_numbers,
    read_object_name,
    read_titles,
)

Maker = Callable[[str], Element]
CONCEPT = "http://terminology.lido-schema.org/lido00113"


def described(inner: str) -> str:
    """Put an identification into its place."""
    wrap = f"<_objectIdentificationWrap>{inner}</_objectIdentificationWrap>"
    return f"<_descriptiveMetadata>{wrap}</_descriptiveMetadata>"


def works(*numbers: tuple[str, str], kind: str = "") -> str:
    """Give the numbers of one repository, each with its type."""
    inner = "".join(
        f'<_workID _type="{of}">{number}</_workID>' if of else f"<_workID>{number}</_workID>"
        for of, number in numbers
    )
    return f'<_repositorySet _type="{kind}">{inner}</_repositorySet>'


@pytest.mark.parametrize(
    ("repositories", "expected"),
    [
        (works(("inventory number", "1")), Numbers("1")),
        (works(("Inventory Number", "1")), Numbers("1")),
        (works((CONCEPT, "1")), Numbers("1")),
        (works(("Inventarnummer", "1")), Numbers("1")),
        (works(("accession number", "1")), Numbers("1")),
        (works(("old", "7"), ("inventory number", "1")), Numbers("1", former=("7",))),
        (works(("accession number", "7"), ("inventory number", "1")), Numbers("1", former=("7",))),
        (works(("", "1")), Numbers("1")),
        (
            works(("inventory number", "1"), ("inventory number", "2")),
            Numbers("1", others=("2",), former=("2",)),
        ),
        (works(("inventory number", "1"), ("inventory number", "1")), Numbers("1")),
        (
            works(("inventory number", "7"), kind="former") + works(("inventory number", "1")),
            Numbers("1", former=("7",)),
        ),
        (works(("shelf", "7")), Numbers("R1", former=("7",), substitute=True)),
        ("", Numbers("R1", substitute=True)),
    ],
)
def test_number_of_the_object(make_record: Maker, repositories: str, expected: Numbers) -> None:
    """The inventory number wins, other numbers are former ones, the record's stands in."""
    record = make_record(
        f"<_lidoRecID>R1</_lidoRecID><_objectPublishedID>https://x.example/1</_objectPublishedID>"
        f"{described(f'<_repositoryWrap>{repositories}</_repositoryWrap>')}"
    )
    assert read_numbers(record, read_blocks(record, "descriptiveMetadata")) == expected


def test_published_number_stands_in_first(make_record: Maker) -> None:
    """A published number that is no address comes before the number of the record."""
    inner = "<_lidoRecID>R1</_lidoRecID><_objectPublishedID>P1</_objectPublishedID>"
    assert read_numbers(make_record(inner), []) == Numbers("P1", substitute=True)
    assert read_numbers(make_record(""), []) == Numbers(substitute=True)


def titles(*values: tuple[str, str, str]) -> str:
    """Give titles, each with its preference and language."""
    inner = "".join(
        f'<_titleSet><_appellationValue _pref="{pref}" xml:lang="{language}">{text}'
        "</_appellationValue></_titleSet>"
        for pref, language, text in values
    )
    return described(f"<_titleWrap>{inner}</_titleWrap>")


@pytest.mark.parametrize(
    ("inner", "expected"),
    [
        (titles(("preferred", "de", "Krug"), ("preferred", "en", "Jug")), ["Jug"]),
        (titles(("alternate", "en", "Pot"), ("preferred", "de", "Krug")), ["Krug"]),
        (titles(("alternate", "en", "Pot")), ["Pot"]),
        (titles(("preferred", "en", "Jug"), ("preferred", "en", "Pot")), ["Jug", "Pot"]),
        (titles(("preferred", "en", "Jug"), ("preferred", "en", "Jug")), ["Jug"]),
        ("<_descriptiveMetadata/>" + titles(("", "cy", "Jwg")), ["Jwg"]),
        ("", []),
    ],
    ids=["language", "preferred", "alternate", "two", "twice", "second block", "none"],
)
def test_title(make_record: Maker, inner: str, expected: list[str]) -> None:
    """The preferred title counts, in English where there is one."""
    assert read_titles(read_blocks(make_record(inner), "descriptiveMetadata")) == expected


def test_object_name_is_the_first_term(make_record: Maker) -> None:
    """The kind of object is a word, never the address of a concept."""
    inner = (
        "<_descriptiveMetadata><_objectClassificationWrap><_objectWorkTypeWrap>"
        "<_objectWorkType><_conceptID>http://x.example/9</_conceptID></_objectWorkType>"
        "<_objectWorkType><_term>jug</_term></_objectWorkType>"
        "</_objectWorkTypeWrap></_objectClassificationWrap></_descriptiveMetadata>"
    )
    assert read_object_name(read_blocks(make_record(inner), "descriptiveMetadata")) == "jug"
    assert read_object_name([]) == ""


@pytest.mark.parametrize(
    ("links", "expected"),
    [
        ("<_recordInfoLink>http://x/1</_recordInfoLink>", "http://x/1"),
        (
            (
                "<_recordInfoLink>http://x/1</_recordInfoLink>"
                "<_recordInfoLink>https://x/1</_recordInfoLink>"
            ),
            "https://x/1",
        ),
        ('<_recordInfoLink _formatResource="xml">https://x/1.xml</_recordInfoLink>', ""),
        ("", ""),
    ],
    ids=["http", "https wins", "for programs", "none"],
)
def test_address_of_the_record(make_record: Maker, links: str, expected: str) -> None:
    """An https address for people is preferred; one for programs is not read."""
    record = make_record(
        "<_administrativeMetadata><_recordWrap><_recordInfoSet>"
        f"{links}</_recordInfoSet></_recordWrap></_administrativeMetadata>"
    )
    assert read_address(read_blocks(record, "administrativeMetadata")) == expected
