from __future__ import annotations

from pathlib import Path

import pytest
from PIL import Image

from tests.cli.store.conftest import Ask, Say

SPIKE = "1931.14.7"


@pytest.fixture
def shown(filled: Ask, tmp_path: Path) -> Ask:
    """Give what asks, with two photos brought for one object."""
    folder = tmp_path / "photos"
    folder.mkdir()
    for side, shade in (("front", 90), ("back", 120)):
        Image.new("RGB", (400, 300), (shade,) * 3).save(folder / f"{SPIKE}_{side}.jpg")
    filled("photos", folder)
    return filled


def test_a_photo_is_shown_otherwise(shown: Ask, say: Say) -> None:
    """Turned, cropped, named for another side, kept off cards; alone the command lists them."""
    first, second = shown("photo", SPIKE)["photos"]
    assert {first["role"], second["role"]} == {"front", "back"}
    shown("photo", SPIKE, "--photo", 2, "--turn", 90, "--crop", "0,0,0.5,1", "--role", "detail")
    shown("photo", SPIKE, "--photo", 2, "--not-printed", "--remove")
    _, words = say("photo", SPIKE)
    assert "detail, turned by 90 degrees, cropped to 0, 0, 0.5, 1, not printed, removed" in words
    shown("photo", SPIKE, "--photo", 2, "--turn", 0, "--crop", "whole", "--printed", "--put-back")
    back = shown("photo", SPIKE)["photos"][1]
    assert (back["turned_deg"], back["crop"], back["is_printed"]) == (0, None, True)
    assert shown("photo", SPIKE, "--order", "2,1")["photos"][0]["sha256"] == second["sha256"]
    _, told = say("history", SPIKE)
    assert "photos put in order" in told


def test_what_makes_no_sense_is_told(shown: Ask, say: Say) -> None:
    """No such photo, no quarter turn, no rectangle, one that is too small, no list of numbers."""
    assert shown("photo", SPIKE)["object_number"] == SPIKE
    assert say("photo", SPIKE, "--photo", 3, "--turn", 90)[0] == 3
    for wrong in (("--turn", 45), ("--crop", "0,1"), ("--order", "a")):
        assert say("photo", SPIKE, *wrong)[0] == 2
    code, words = say("photo", SPIKE, "--crop", "0,0,0.01,1")
    assert (code, "16 each way" in words) == (2, True)
    assert "No photo was brought" in say("photo", "X.112")[1]
