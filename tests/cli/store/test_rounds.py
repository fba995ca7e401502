"""Tests for noting checks and for what is due."""

from __future__ import annotations

from service.cli.store.rounds import read_results
from service.handling.checks.kinds import CheckKind, CheckResult
from service.store.kept.checks import IN_ORDER, Looked
from tests.cli.store.conftest import Ask, Say

ALL_FOUR = ["pests", "tissue", "corrosion", "labels"]


def test_a_check_takes_a_container_off_the_list(filled: Ask, say: Say) -> None:
    """What was never looked at is due; what was looked at today is not, but is within a year."""
    (row,) = filled("due")["due"]
    assert (row["container_number"], row["is_overdue"]) == ("B-027", True)
    assert [check["kind"] for check in row["checks"]] == ALL_FOUR
    assert row["checks"][0]["rule"] == "check-yearly"
    assert filled("due", "--place", "Nowhere")["due"] == []
    assert [
        one["container_number"] for one in filled("due", "--place", row["location"])["due"]
    ] == ["B-027"]
    assert "Overdue" in say("due")[1]
    assert "Never checked" in say("due")[1]
    filled("checked", "B-027", "--note", "no pests")
    assert filled("due")["due"] == []
    assert "Nothing is due" in say("due")[1]
    (row,) = filled("due", "--within", 366)["due"]
    assert not row["is_overdue"]
    assert "Due by" in say("due", "--within", 366)[1]
    assert say("due", "--within", 99_999_999)[0] == 2


def test_one_look_leaves_the_others_due(filled: Ask) -> None:
    """Only what was named and done counts; one kind can be asked for."""
    filled("checked", "B-027", "--labels", "ok", "--tissue", "not-done")
    (row,) = filled("due")["due"]
    assert [check["kind"] for check in row["checks"]] == ["pests", "tissue", "corrosion"]
    assert filled("due", "--kind", "labels")["due"] == []


def test_pests_are_answered_with_what_to_do(filled: Ask, say: Say) -> None:
    """The label to print, and where to look next; where nothing stands nearby nothing is named."""
    told = filled("checked", "B-027", "--pests", "found", "--note", "larvae in the felt")
    assert told["proposal"]["isolate"] == "B-027"
    assert told["proposal"]["look_at"] == {"together": [], "beside": [], "next": []}
    assert told["proposal"]["rules"] == ["isolate-pests", "look-beside-pests"]
    words = say("checked", "B-027", "--pests", "found")[1]
    assert "Pests something found" in words
    assert 'isolation-label "B-027"' in words
    assert filled("checked", "B-027", "--pests", "ok")["proposal"] is None


def test_a_check_noted_by_mistake_is_taken_back(filled: Ask, say: Say) -> None:
    """By the number that noting it told."""
    number = filled("checked", "B-027")["check"]
    assert f"noted as check {number + 1}." in say("checked", "B-027")[1]
    assert "is taken back" in say("take-back-check", "B-027", number + 1)[1]
    assert filled("due")["due"] == []
    filled("take-back-check", "B-027", number)
    assert len(filled("due")["due"]) == 1
    assert say("take-back-check", "B-027", number)[0] == 3


def test_what_should_be_back_is_due(filled: Ask) -> None:
    """A slip whose day has passed is listed."""
    filled("out", "1931.14.7", "--to", "I. Hale", "--due", "2020-01-01")
    assert [row["object_number"] for row in filled("due")["overdue"]] == ["1931.14.7"]


def test_no_look_named_means_all_in_order() -> None:
    """But never that it was weighed."""
    silent = dict.fromkeys(CheckKind)
    assert read_results(silent) == IN_ORDER
    named = {**silent, CheckKind.PESTS: CheckResult.FOUND}
    assert read_results(named) == (Looked(CheckKind.PESTS, CheckResult.FOUND),)
