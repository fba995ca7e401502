from __future__ import annotations

import pytest

from service.handling.presume.words import has_phrase, make_phrases, singulars, split_words


def test_words_are_split_at_hyphens_and_signs() -> None:
    """Capitals, hyphens and curly apostrophes do not matter."""
    assert split_words("X-ray film; Scheele\u2019s green") == (
        "x",
        "ray",
        "film",
        "scheele's",
        "green",
    )
    assert split_words("") == ()


@pytest.mark.parametrize(
    ("text", "phrase", "found"),
    [
        ("Two gas masks", "gas mask", True),
        ("Torch brushes", "torch brush", True),
        ("Gas and mask", "gas mask", False),
        ("Gasmask", "mask", False),
        ("Fishing pike pole", "stuffed pike", False),
        ("Leaden", "lead", False),
        ("", "lead", False),
    ],
)
def test_whole_words_are_found(text: str, phrase: str, found: object) -> None:
    """A phrase is found as it stands or in the plural, never inside a word or divided."""
    assert has_phrase(split_words(text), make_phrases([phrase])) is found


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Pistol holsters", False),
        ("Pistol cleaning rods", False),
        ("Pistol, cleaning oil", True),
        ("Pistol in a holster", True),
        ("Holster, pistol", True),
        ("Holster for a pistol holster and two pistols", True),
    ],
)
def test_a_word_after_may_make_it_another_thing(text: str, found: object) -> None:
    """A pistol holster is no pistol, and a pistol in a holster is one."""
    barred = make_phrases(["holster", "cleaning rod"])
    assert has_phrase(split_words(text), make_phrases(["pistol"]), not_before=barred) is found


def test_phrases_are_filed_under_their_first_word() -> None:
    """Two phrases that begin alike stand together."""
    assert make_phrases(["gas mask", "gas lamp", "radium"]) == {
        "gas": (("gas", "mask"), ("gas", "lamp")),
        "radium": (("radium",),),
    }


def test_singulars_know_the_plural() -> None:
    """Every word that a written one may be the plural of is given, and no other is."""
    assert singulars("brushes") == ("brushes", "brushe", "brush")
    assert singulars("masks") == ("masks", "mask")
    assert singulars("mask") == ("mask",)
