from __future__ import annotations

from dataclasses import FrozenInstanceError

import pytest

from service.render.typeset.line import SetLine


def test_a_set_line_cannot_be_changed() -> None:
    """It is remembered and handed out again and again."""
    line = SetLine(b"/F0 10 Tf [<0001>] TJ", 1.0, 2.0, 0.5, {0: {1: "a"}})
    with pytest.raises(FrozenInstanceError):
        line.width_mm = 2.0  # type: ignore[misc]
