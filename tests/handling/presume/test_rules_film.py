from __future__ import annotations

import pytest

from service.handling.presume.rules_film import FILM
from tests.handling.presume.twins import Twin, rules_for

TWINS = (
    Twin("nitrate-film-dated", "film negative | Harbour | 1951", "film negative | Harbour | 1952"),
    Twin("nitrate-film-dated", "film negative | Harbour | about 1930", "film negative | Harbour"),
    Twin(
        "nitrate-film-dated",
        "negative | Harbour | 1920 | film; silver",
        "negative | Harbour | 1920 | glass; silver",
    ),
    Twin(
        "nitrate-film-dated",
        "x-ray | X-ray film of a hand | 1935",
        "x-ray | X-ray safety film of a hand | 1935",
    ),
    Twin(
        "nitrate-film-dated",
        "film reel | Launch of a cutter | 1890s",
        "poster | Launch of a cutter, cine film | 1860",
    ),
    Twin(
        "nitrate-film-named",
        "negative | Harbour | | cellulose nitrate",
        "negative | Harbour | | gelatin",
    ),
    Twin("nitrate-film-named", "| Nitrate film of the regatta", "| Film of the regatta"),
    Twin(
        "acetate-film-named",
        "negative | Harbour | 1960 | cellulose acetate",
        "scarf | Scarf | 1960 | acetate",
    ),
    Twin("nitrate-film-dated", "photograph | Film negative | 1930", "photograph | Print | 1930"),
    Twin("nitrate-film-named", "photograph | Nitrate negative", "photograph | Negative"),
    Twin("acetate-film-named", "photograph | Acetate negative", "photograph | Negative"),
    Twin("celluloid-named", "comb | Comb | | celluloid", "comb | Comb | | horn"),
    Twin("celluloid-named", "toy | Celluloid doll", "film | Film | | cellulose nitrate"),
)


@pytest.mark.parametrize("twin", TWINS, ids=lambda twin: twin.about)
def test_a_rule_is_about_one_twin_only(twin: Twin) -> None:
    """The record that the guidance means gets its hazard; the one just beside it does not."""
    assert twin.code in rules_for(twin.about)
    assert twin.code not in rules_for(twin.beside)


def test_every_rule_has_its_twins() -> None:
    """No rule stands untried."""
    assert {twin.code for twin in TWINS} == {one.rule.code for one in FILM}
