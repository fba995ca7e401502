"""The proved plates of one run."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from service.geometry import Rect
from service.render.plates.plate import Plate, ProvedPlate


class Shelf:
    """Plates by their keys; whoever composes or proves a file takes them from here."""

    def __init__(self) -> None:
        """Begin empty."""
        self._plates: dict[str, ProvedPlate] = {}

    def add(self, plates: Mapping[str, ProvedPlate]) -> None:
        """Put plates on the shelf."""
        self._plates.update(plates)

    def holds(self, key: str) -> bool:
        """Tell whether a plate is there."""
        return key in self._plates

    def ink(self, key: str) -> Rect:
        """Give how far the ink of a plate reaches on its face.

        Raises:
            KeyError: When it is not there.
        """
        return self._plates[key].proof.ink

    def plates(self, keys: Sequence[str]) -> dict[str, Plate]:
        """Give the plates of these keys.

        Raises:
            KeyError: When one is not there.
        """
        return {key: self._plates[key].plate for key in keys}

    def proved(self, keys: Sequence[str]) -> dict[str, ProvedPlate]:
        """Give the plates of these keys with their proofs.

        Raises:
            KeyError: When one is not there.
        """
        return {key: self._plates[key] for key in keys}
