from __future__ import annotations

import pytest

from service.handling.cautions import CAUTIONS, drop_implied, find_caution
from service.records.codes import CAUTION_CODES
from service.render.task import TEMPLATES

# Which cautions are those of a whole container: common practice, no source.
WHOLE_CONTAINER = {
    "fragile",
    "glass",
    "this-way-up",
    "keep-upright",
    "keep-flat",
    "do-not-tilt",
    "keep-dry",
    "nothing-on-top",
    "heavy-end",
}


def test_every_code_has_its_entry() -> None:
    """What a record may say has words, and no words stand for a code that cannot be recorded."""
    assert set(CAUTIONS) == set(CAUTION_CODES)


@pytest.mark.parametrize("code", CAUTIONS)
def test_every_entry_can_be_printed(code: str) -> None:
    """An entry has a name, a source and a mark that is shipped, and implies only known codes."""
    entry = CAUTIONS[code]
    assert entry.name
    assert entry.rule.says.endswith(".")
    assert (TEMPLATES / "pictograms" / f"{entry.mark}.svg").exists()
    assert set(entry.implies) <= set(CAUTIONS) - {code}
    assert "safe" not in entry.name.lower()


@pytest.mark.parametrize(
    ("codes", "kept"),
    [
        (["fragile", "glass"], ["glass"]),
        (["this-way-up", "keep-upright", "do-not-tilt"], ["do-not-tilt"]),
        (["keep-upright", "this-way-up", "keep-dry"], ["keep-upright", "keep-dry"]),
        (["this-way-up", "do-not-tilt"], ["do-not-tilt"]),
        (["this-way-up", "fragile"], ["this-way-up", "fragile"]),
        ([], []),
    ],
)
def test_a_stricter_caution_says_the_weaker(codes: list[str], kept: list[str]) -> None:
    """What another caution implies is not said again; the order stays."""
    assert drop_implied(codes) == kept


def test_an_unknown_caution_prints_as_written() -> None:
    """A word of the museum's own is kept, with the general mark."""
    entry = find_caution("mind-the-lid")
    assert (entry.name, entry.mark, entry.implies) == ("Mind the lid", "caution", ())


def test_some_decide_how_the_whole_container_is_lifted() -> None:
    """Whoever makes another caution one of the whole container says so here, too."""
    whole = {code for code, entry in CAUTIONS.items() if entry.whole_container}
    assert whole == WHOLE_CONTAINER


def test_a_caution_of_the_museum_has_its_rule() -> None:
    """It is printed as it is written, and says so."""
    assert find_caution("mind the cat").rule.code == "caution-as-written"
    assert find_caution("fragile") is CAUTIONS["fragile"]
