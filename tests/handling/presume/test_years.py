from __future__ import annotations

import pytest

from service.handling.presume.years import Years, read_years


@pytest.mark.parametrize(
    ("text", "first", "last"),
    [
        ("1891", 1891, 1891),
        ("about 1890", 1880, 1900),
        ("c.1890", 1880, 1900),
        ("ca 1890", 1880, 1900),
        ("tua 1850", 1840, 1860),
        ("1890?", 1880, 1900),
        ("1930s", 1930, 1939),
        ("1930\u2019s", 1930, 1939),
        ("1800s", 1800, 1899),
        ("1920s-1930s", 1920, 1939),
        ("1895-1905", 1895, 1905),
        ("1895 \u2013 1905", 1895, 1905),
        ("1914-18", 1914, 1918),
        ("1890/91", 1890, 1891),
        ("1902 to 1904", 1902, 1904),
        ("19th century", 1801, 1900),
        ("19th c.", 1801, 1900),
        ("18th-19th century", 1701, 1900),
        ("early 20th century", 1901, 1940),
        ("mid-19th century", 1826, 1875),
        ("late 20th century", 1961, 2000),
        ("first half of the 20th century", 1901, 1950),
        ("second half of the 20th century", 1951, 2000),
        ("late 19th to early 20th century", 1801, 2000),
        ("19. Jahrhundert", 1801, 1900),
        ("before 1880", -10_000, 1880),
        ("before about 1980", -10_000, 1990),
        ("after 1950", 1950, 9_999),
        ("1950 or later", 1950, 9_999),
        ("300 BC", -10_000, 0),
        ("1500 BC", -10_000, 0),
        ("first half of the 19th century", 1801, 1850),
        ("1st half 19th century", 1801, 1850),
        ("Georgian", 1714, 1837),
        ("Victorian", 1837, 1901),
        ("Edwardian", 1901, 1910),
        ("First World War", 1914, 1918),
        ("World War I", 1914, 1918),
        ("Second World War", 1939, 1945),
        ("World War II", 1939, 1945),
        ("1890-1890", 1890, 1890),
        ("1890-85", 1890, 1890),
        ("after about 1950", 1940, 9_999),
        ("lata 1920.", 1920, 1920),
    ],
)
def test_years_are_read(text: str, first: int, last: int) -> None:
    """What people write of a date gives its first and last year, rather too many than too few."""
    assert read_years(text) == Years(first, last)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "19th-17th century",
        "0th century",
        "unknown",
        "old",
        "no. 12345",
        "0.1890",
        "明治時代",
        "300",
    ],
)
def test_what_names_no_year_stays_unknown(text: str) -> None:
    """No year is made up from a number that is none, or from words that say nothing."""
    assert read_years(text) is None


def test_years_meet_where_they_share_one() -> None:
    """A thing that may be from the last year of a rule counts, one from the year after does not."""
    rule = Years(1889, 1951)
    assert rule.meets(Years(1951, 1960))
    assert not rule.meets(Years(1952, 1960))
    assert rule.meets(Years(1880, 1889))
    assert not rule.meets(Years(1880, 1888))


def test_the_first_century_has_years() -> None:
    """And a range that ends before it begins names none."""
    assert read_years("1st century") == Years(1, 100)
    assert read_years("19th-18th century") is None
