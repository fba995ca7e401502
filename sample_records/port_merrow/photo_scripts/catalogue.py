"""The list of pictures: file name, camera, and the function that sets the object on the table."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from studio import Part, View

if TYPE_CHECKING:
    from collections.abc import Callable

    Setting = Callable[[], list[Part]]


@dataclass(frozen=True, slots=True)
class Picture:
    """One picture to take; `samples` is light paths a pixel before noise is taken out."""

    file: str
    setting: Setting
    view: View
    samples: int


PICTURES: dict[str, Picture] = {}


def picture(file: str, view: View, *, samples: int = 9) -> Callable[[Setting], Setting]:
    """Enter the decorated function in the catalogue under a file name."""

    def enter(setting: Setting) -> Setting:
        PICTURES[file] = Picture(file, setting, view, samples)
        return setting

    return enter
