"""Cards in two languages, for every test that words or fits one."""

from __future__ import annotations

from service.cards.second.phrasebook import Phrasebook
from service.languages.catalogue import load_phrasebook
from service.records.museum.language import Language

MADE_UP = Phrasebook(
    "pl",
    "Polish",
    is_reviewed=False,
    messages={
        "Lead": "Ołów",
        "{hazard} presumed": "{hazard} (przypuszczalnie)",
        "Gloves. Do not disturb dust. Wash hands.": "Rękawice. Umyć ręce.",
        "Thin nitrile gloves; where there is dust, coveralls and a dust mask": "Cienkie rękawice",
        "Fragile": "Kruche",
        "At most {limit} boxes on top": "Pudła na wierzchu: najwyżej {limit}",
        "Heavy end": "Ciężki koniec",
        "Ask before opening or handling.": "Najpierw zapytać.",
        "Weight not known": "Masa nieznana",
        "Weigh before lifting.": "Zważyć przed podniesieniem.",
    },
)


def phrasebook(language: Language) -> Phrasebook:
    """Give the phrasebook of a language that ships."""
    book = load_phrasebook(language)
    assert book is not None
    return book
