"""The museum's choices about lifting, from the group `lifting` of its TOML file or JSON object."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import fields, replace
from enum import StrEnum
from typing import TypeVar

from service.findings import Where
from service.records.cells.weights import parse_weight
from service.records.museum.lifting import USUAL_LIFTING, LiftingChoices
from service.records.record import WeightBasis
from service.records.rows.notebook import Notebook
from service.records.rows.text import quote_text
from service.sentence import Sentence
from service.units import kg_from_grams

GROUP = "lifting"
WEIGHTS = ("not_high_above", "waist_above", "two_people_above", "aid_above")
NAMES = ("method", "column", "twist_deg", "lifts_per_min", "duration", *WEIGHTS)
MOST_TWIST_DEG = 180.0
MOST_LIFTS_PER_MIN = 60.0
"""More than one lift a second is a slip of the pen (common practice, no source)."""

Word = TypeVar("Word", bound=StrEnum)


def read_lifting(values: object, *, where: Where, notebook: Notebook) -> LiftingChoices:
    """Read the choices; what cannot be used is noted as an error, and the usual one stands.

    `where` is the place of the group; each finding names the choice within it.
    """
    if not isinstance(values, dict):
        notebook.note("lifting-choice", where, Sentence("A group of choices should stand here."))
        return USUAL_LIFTING
    return _Group(values, where, notebook).read()


class _Group:
    """The group of choices, with its place and the notebook for what it holds."""

    def __init__(self, values: Mapping[str, object], where: Where, notebook: Notebook) -> None:
        self._values = values
        self._where = where
        self._notebook = notebook

    def read(self) -> LiftingChoices:
        for name in self._values:
            if name not in NAMES:
                self._note(name, f"There is no such choice; there are {', '.join(NAMES)}")
        usual = USUAL_LIFTING
        return self._in_order(
            LiftingChoices(
                method=self._word("method", usual.method),
                column=self._word("column", usual.column),
                twist_deg=self._number("twist_deg", usual.twist_deg, MOST_TWIST_DEG),
                lifts_per_min=self._number(
                    "lifts_per_min", usual.lifts_per_min, MOST_LIFTS_PER_MIN
                ),
                duration=self._word("duration", usual.duration),
                not_high_above_kg=self._weight("not_high_above"),
                waist_above_kg=self._weight("waist_above"),
                two_people_above_kg=self._weight("two_people_above"),
                aid_above_kg=self._weight("aid_above"),
            )
        )

    def _word(self, name: str, usual: Word) -> Word:
        value = self._values.get(name, usual)
        for word in type(usual):
            if value == word:
                return word
        self._note(name, f"{_quote(value)} is not one of {', '.join(type(usual))}")
        return usual

    def _number(self, name: str, usual: float, most: float) -> float:
        value = self._values.get(name, usual)
        if isinstance(value, int | float) and not isinstance(value, bool) and 0 <= value <= most:
            return float(value)
        self._note(name, f"{_quote(value)} is not a number from 0 to {most:g}")
        return usual

    def _weight(self, name: str) -> float | None:
        if name not in self._values:
            return None
        value = self._values[name]
        weight = parse_weight(value) if isinstance(value, str) else None
        if weight is None or weight.basis is WeightBasis.ESTIMATED or weight.weight_g <= 0:
            self._note(name, f'{_quote(value)} is not a weight with its unit, such as "12 kg"')
            return None
        return kg_from_grams(weight.weight_g)

    def _in_order(self, choices: LiftingChoices) -> LiftingChoices:
        """Refuse weights of which a graver advice would begin below a milder one."""
        tiers = choices.tiers()
        if tiers.rise:
            return choices
        said = ", ".join(f"{getattr(tiers, each.name):g}" for each in fields(tiers))
        self._note("", f"The weights do not rise from {WEIGHTS[0]} to {WEIGHTS[-1]}: {said} kg")
        return replace(
            choices,
            not_high_above_kg=None,
            waist_above_kg=None,
            two_people_above_kg=None,
            aid_above_kg=None,
        )

    def _note(self, name: str, message: str) -> None:
        column = f"{self._where.column}/{name}".rstrip("/")
        self._notebook.note(
            "lifting-choice",
            replace(self._where, column=column),
            Sentence("{message}.", message=message),
        )


def _quote(value: object) -> str:
    if isinstance(value, float) and not math.isfinite(value):
        return "That"
    return quote_text(value if isinstance(value, str) else str(value))
