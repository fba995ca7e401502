"""Tests for one reason."""

from __future__ import annotations

from service.cards.changes.change import Change, ChangeKind, Urgency


def test_outside_only_what_may_stand_there_is_said() -> None:
    """Where nothing is discreet the words are the same for everybody."""
    plain = Change(ChangeKind.PHOTO, Urgency.WORDING, "photo of X.112 changed", "X.112")
    assert (plain.outside_words, plain.is_discreet) == (plain.words, False)
    secret = Change(ChangeKind.LIFT, Urgency.CONTENTS, "a revolver came", "X.112", "X.112 added")
    assert (secret.outside_words, secret.is_discreet) == ("X.112 added", True)
