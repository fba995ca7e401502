"""Tests for reading a name into runs of digits and letters."""

from __future__ import annotations

import pytest

from service.records.photos.written import read_written, trim_ending


def test_runs_and_gaps() -> None:
    """Digits lose leading zeros in the key, letters their case; what stands between is kept."""
    written = read_written("IMG_1987.0412-3b")
    assert written.key == ("img", "1987", "412", "3", "b")
    assert written.raw == ("img", "1987", "0412", "3", "b")
    assert written.gaps == ("", "_", ".", "-", "")
    assert written.between(1, 4) == "1987.0412-3"


@pytest.mark.parametrize(("text", "key"), [("000", ("0",)), ("\u0661\u0662", ("12",)), ("...", ())])
def test_digits_of_any_script(text: str, key: tuple[str, ...]) -> None:
    """Digits count by value whatever their script; zero stays."""
    assert read_written(text).key == key


@pytest.mark.parametrize(
    ("name", "stem"),
    [
        ("a.JPG", "a"),
        ("a.jpg.jpeg", "a"),
        ("1987.412.3", ""),
        ("a.txt", ""),
        (".a.jpg", ""),
        ("a" * 300 + ".jpg", ""),
    ],
)
def test_endings(name: str, stem: str) -> None:
    """Only the name of a picture has a stem; hidden and endless names have none."""
    assert trim_ending(name) == stem
