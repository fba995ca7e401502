"""The languages that can stand beside English on cards."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum


class Language(StrEnum):
    """A second language by its code (BCP 47), or none."""

    NONE = "none"
    WELSH = "cy"
    FRENCH = "fr"
    GERMAN = "de"
    SPANISH = "es"
    POLISH = "pl"


LANGUAGE_NAMES: Mapping[Language, str] = {
    Language.WELSH: "Welsh",
    Language.FRENCH: "French",
    Language.GERMAN: "German",
    Language.SPANISH: "Spanish",
    Language.POLISH: "Polish",
}
"""How English names the languages that a museum can choose."""
