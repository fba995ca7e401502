from __future__ import annotations

from urllib.parse import parse_qs, unquote, urlsplit

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.errors import AddressError
from service.symbols.address import AddressPattern, payload_for_number

OBJECTS = "https://collections.example/objects/{object_number}"


@pytest.mark.parametrize(
    ("number", "address"),
    [
        ("1987.412.3", "https://collections.example/objects/1987.412.3"),
        ("PMM/77 (b)", "https://collections.example/objects/PMM%2F77%20%28b%29"),
        ("{object_number}", "https://collections.example/objects/%7Bobject_number%7D"),
        (r"\1", "https://collections.example/objects/%5C1"),
        ("a?b#c", "https://collections.example/objects/a%3Fb%23c"),
    ],
)
def test_fills_a_number(number: str, address: str) -> None:
    """Whatever signs a number holds, it stays one segment of the path."""
    assert AddressPattern(OBJECTS).fill(number) == address


def test_puts_the_query_behind() -> None:
    """Revision and check letters follow a question mark in the order they come."""
    pattern = AddressPattern("https://boxes.example/c/{container_number}")
    assert pattern.placeholder == "container_number"
    address = pattern.fill("B 12", query={"r": "7", "k": "KMTF"})
    assert address == "https://boxes.example/c/B%2012?r=7&k=KMTF"


def test_joins_a_second_query() -> None:
    """A pattern that has a query of its own gets the rest behind an ampersand."""
    pattern = AddressPattern("https://boxes.example/find?id={object_number}")
    assert pattern.fill("3&4", query={"r": "7"}) == "https://boxes.example/find?id=3%264&r=7"


def test_capitals_spare_the_query() -> None:
    """Capitals are made of the address and number, never of what the query says."""
    pattern = AddressPattern(OBJECTS, upper_case=True)
    address = pattern.fill("l2019.4a", query={"k": "x"})
    assert address == "HTTPS://COLLECTIONS.EXAMPLE/OBJECTS/L2019.4A?k=x"


@pytest.mark.parametrize("number", ["", ".", ".."])
def test_refuses_numbers_that_lead_elsewhere(number: str) -> None:
    """A browser takes one or two dots for a way up, encoded or not."""
    with pytest.raises(AddressError, match="lead elsewhere"):
        AddressPattern(OBJECTS).fill(number)


@pytest.mark.parametrize(
    "pattern",
    [
        OBJECTS,
        "HTTPS://COLLECTIONS.EXAMPLE/O/{object_number}",
        "https://collections.example:8443/o/{object_number}",
        "https://c-1.example/o/{object_number}/card;v=1?x=%20",
        "https://collections/o/{object_number}",
        "https://collections.example?o={object_number}",
        "https://collections.example/o={container_number}",
    ],
)
def test_takes_lasting_addresses(pattern: str) -> None:
    """Any https address of a named host will do."""
    assert AddressPattern(pattern).text == pattern


@pytest.mark.parametrize(
    ("pattern", "reason"),
    [
        ("", "does not begin with https"),
        ("collections.example/{object_number}", "does not begin with https"),
        ("//collections.example/{object_number}", "does not begin with https"),
        ("https:/collections.example/{object_number}", "does not begin with https"),
        ("http://collections.example/{object_number}", "only https is allowed, not http"),
        ("javascript:alert({object_number})", "not javascript"),
        ("data:text/html,{object_number}", "not data"),
        ("file:///{object_number}", "not file"),
        ("https:///{object_number}", "names no host"),
        ("https://?{object_number}", "names no host"),
        ("https://a:b@c.example/{object_number}", "user name"),
        ("https://c.example@evil.example/{object_number}", "user name"),
        ("https://c.example\\@evil.example/{object_number}", "may not hold"),
        ("https://localhost/{object_number}", "localhost"),
        ("https://LocalHost:8000/{object_number}", "localhost"),
        ("https://a.localhost/{object_number}", "localhost"),
        ("https://127.0.0.1/{object_number}", "bare IP"),
        ("https://127.1/{object_number}", "bare IP"),
        ("https://2130706433/{object_number}", "bare IP"),
        ("https://0x7f.1/{object_number}", "bare IP"),
        ("https://0x7f000001/{object_number}", "bare IP"),
        ("https://[::1]/{object_number}", "bare IP"),
        ("https://collections.example./{object_number}", "no host name"),
        ("https://-a.example/{object_number}", "no host name"),
        ("https://a..example/{object_number}", "no host name"),
        ("https://a_b.example/{object_number}", "no host name"),
        (f"https://{'a' * 64}.example/{{object_number}}", "no host name"),
        ("https://{object_number}.example/", "no host name"),
        ("https://xn--80ak6aa92e.example/{object_number}", "outside plain ASCII"),
        ("https://\N{CYRILLIC SMALL LETTER A}.example/{object_number}", "outside plain ASCII"),
        ("https://a.example/\N{RIGHT-TO-LEFT OVERRIDE}{object_number}", "unseen"),
        ("https://a.example/\n{object_number}", "unseen"),
        ("https://a.example/ {object_number}", "blank"),
        ("https://a.example:/{object_number}", "no port"),
        ("https://a.example:0/{object_number}", "no port"),
        ("https://a.example:65536/{object_number}", "no port"),
        ("https://a.example:8x/{object_number}", "no port"),
        ("https://a.example/", "exactly once"),
        ("https://a.example/{object_number}/{object_number}", "exactly once"),
        ("https://a.example/{object_number}/{container_number}", "exactly once"),
        ("https://a.example/{title}", "only {object_number} or {container_number}"),
        ("https://a.example/{object_number}{title}", "only {object_number}"),
        ("https://a.example/{{object_number}}", "may not hold"),
        ("https://a.example/{Object_Number}", "exactly once"),
        ("https://a.example/o#{object_number}", "never reaches the server"),
        ("https://a.example/%2/{object_number}", "may not hold"),
        ("https://a.example/<b>/{object_number}", "may not hold"),
        ('https://a.example/"/{object_number}', "may not hold"),
    ],
)
def test_refuses_other_patterns(pattern: str, reason: str) -> None:
    """Whatever could not give a lasting https address is refused with a plain reason."""
    with pytest.raises(AddressError) as trouble:
        AddressPattern(pattern)
    assert reason in trouble.value.reason


@given(st.text(st.characters(codec="utf-8"), min_size=1), st.booleans())
def test_numbers_come_back(number: str, query_too: bool) -> None:  # noqa: FBT001  By hypothesis.
    """The standard library finds the whole number in the last segment, whatever is in it."""
    if number in {".", ".."}:
        return
    query = {"r": number} if query_too else {}
    parts = urlsplit(AddressPattern(OBJECTS).fill(number, query=query))
    assert (parts.scheme, parts.netloc) == ("https", "collections.example")
    assert unquote(parts.path.removeprefix("/objects/")) == number
    assert parts.path.count("/") == 2
    assert parse_qs(parts.query, keep_blank_values=True) == ({"r": [number]} if query_too else {})


@pytest.mark.parametrize(
    "text",
    [
        "https://a.example/c/{container_number}",
        "https://a.example/?id={container_number}",
        "https://a.example/{container_number}/card?x=1",
    ],
)
def test_a_scanned_address_gives_its_number(text: str) -> None:
    """Whatever was filled in comes back, with and without the query; other addresses give none."""
    pattern = AddressPattern(text)
    for number in ("B-042", "B/42 a", "1987.412.3a-c", "é?&#%", "$&*"):
        assert pattern.read(pattern.fill(number)) == number
        assert pattern.read(pattern.fill(number, query={"r": "7", "k": "KMTF"})) == number
    assert pattern.read("https://b.example/c/B-042") is None
    assert pattern.read("https://a.example/") is None


def test_capitals_of_a_scanned_address_stay() -> None:
    """Where addresses are printed in capitals, case is no difference."""
    pattern = AddressPattern("https://a.example/c/{container_number}", upper_case=True)
    assert pattern.read(pattern.fill("b-042", query={"k": "KMTF"})) == "B-042"


def test_without_a_pattern_the_number_stands_alone() -> None:
    """A museum without an address gets its bare number in the symbol."""
    assert payload_for_number("1987.412.3", pattern=None, query={"r": "7"}) == "1987.412.3"


def test_with_a_pattern_the_address_is_the_payload() -> None:
    """A museum with an address gets it filled."""
    payload = payload_for_number("X.112", pattern=AddressPattern(OBJECTS), query={"r": "7"})
    assert payload == "https://collections.example/objects/X.112?r=7"
