"""Tests for finding and showing."""

from __future__ import annotations

from tests.cli.store.conftest import Ask, Say


def test_which_box_is_it_in(filled: Ask, say: Say) -> None:
    """The answer is one line: number, title, box and place."""
    (hit,) = filled("find", "marlin")["objects"]
    assert hit["lies_in"][0]["container_number"] == "B-027"
    _, words = say("find", "marlin")
    assert words.startswith("1931.14.7  Marlinspike")
    assert "in B-027 (" in words
    assert "Nothing was found" in say("find", "zeppelin")[1]


def test_a_container_and_an_object_are_shown(filled: Ask, say: Say) -> None:
    """One command for both; a number that is neither is told as such."""
    assert "1931.14.7" in {place["object_number"] for place in filled("show", "B-027")["places"]}
    lead = filled("show", "1931.14.2a-c")
    assert lead["hazards"] == [{"code": "lead", "state": "confirmed"}]
    assert "Hazard: lead, confirmed" in say("show", "1931.14.2a-c")[1]
    assert "Revision 1" in say("show", "B-027")[1]
    code, words = say("show", "X.999")
    assert (code, "no container or object" in words) == (3, True)


def test_the_history_names_who(filled: Ask, say: Say) -> None:
    """Every change stands there with the person who made it."""
    filled("pack", "B-027", "X.900", "--by", "Ben Marl")
    events = filled("history", "B-027")["events"]
    told = [(event["by"], event["verb"]) for event in events]
    assert told[-2:] == [("Ben Marl", "packed"), ("Ben Marl", "weight taken out")]
    assert "Ben Marl: packed B-027 r2" in say("history", "B-027")[1]
    assert say("history", "X.999")[0] == 3
