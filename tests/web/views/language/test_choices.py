from __future__ import annotations

from pathlib import Path

import pytest

from service.languages.saying import speaking
from service.web.views.language.choices import (
    list_hazards,
    list_kinds,
    list_lids,
    list_sides,
    list_states,
)
from tests.web.views.language.pseudo import CODE, bracketed


def test_choices_are_codes_with_their_words() -> None:
    """What a form sends is the code, whatever it says."""
    assert ("garment cover", "Garment cover") in list_kinds()
    assert ("clear", "Clear") in list_lids()
    assert ("unchecked", "Not checked") in list_states()
    assert ("detail", "Detail") in list_sides()


def test_hazards_stand_in_the_order_of_their_names() -> None:
    """As they are looked for in a long list."""
    names = [name for _, name in list_hazards()]
    assert names == sorted(names, key=str.casefold)
    assert ("arsenic", "Arsenic") in list_hazards()


def test_choices_are_said_in_the_language_of_the_reader(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The codes stay."""
    with bracketed(tmp_path, monkeypatch), speaking(CODE):
        assert ("tube", "⟦Tube⟧") in list_kinds()
        assert ("arsenic", "⟦Arsenic⟧") in list_hazards()
