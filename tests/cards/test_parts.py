from __future__ import annotations

from dataclasses import fields

from service.cards.parts import Handling, Pointer, Warn
from service.handling.lifting import LiftAdvice


def test_a_warning_without_objects_points_at_none() -> None:
    """A caution for the whole container says all by its name; its optional fields are empty."""
    warn = Warn("fragile", "Fragile")
    assert (warn.instruction, warn.pointers, warn.unmarked) == ("", (), ())


def test_handling_always_says_something_of_the_weight() -> None:
    """The lift is the only part that no card goes without."""
    handling = Handling(LiftAdvice("", "Weight not known", "Weigh before lifting."))
    empty = {field.name for field in fields(handling) if not getattr(handling, field.name)}
    assert empty == {"hazards", "cautions", "limits"}
    assert Pointer("B2", "X.1") != Pointer("", "X.1")
