from __future__ import annotations

from pathlib import Path

from service.render.frames.versions import frames_sha256
from service.render.task import TEMPLATES
from tests.render.frames import made


def test_equal_templates_have_one_name(tmp_path: Path) -> None:
    """A copy in another folder is the same; the name is a SHA-256 in hexadecimals."""
    copied = made.templates_with(tmp_path / "a")
    assert frames_sha256(copied) == frames_sha256(TEMPLATES)
    assert len(bytes.fromhex(frames_sha256(TEMPLATES))) == 32


def test_a_changed_style_or_template_has_another_name(tmp_path: Path) -> None:
    """Nothing measured before a change is used after it."""
    style = made.templates_with(tmp_path / "a", css=".ink-grey { color: #444 }")
    card = made.templates_with(tmp_path / "b", card="<hr>")
    names = {frames_sha256(TEMPLATES), frames_sha256(style), frames_sha256(card)}
    assert len(names) == 3
