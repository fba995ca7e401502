"""Files of planned runs, kept a while so that their sheets can be looked at one by one.

A plan goes by a hash of its files, which are written once: its pictures never change. Beyond some
plans, some bytes or a day the oldest go; whoever still looks at one asks for it again.
"""

from __future__ import annotations

import hashlib
import shutil
import time
import uuid
from collections.abc import Callable, Sequence
from contextlib import suppress
from dataclasses import KW_ONLY, dataclass
from pathlib import Path

from service.errors import NotFoundError

FOLDER = "plans"
_ASIDE = ".part"
_PLANS = 20
_BYTES = 500_000_000
_SECONDS = 24 * 3600.0


@dataclass(frozen=True, slots=True)
class KeptPlans:
    """The folder; it may be deleted at any time."""

    folder: Path
    _: KW_ONLY
    most_plans: int = _PLANS
    most_bytes: int = _BYTES
    most_seconds: float = _SECONDS
    now_seconds: Callable[[], float] = time.time

    def keep(self, made: Path) -> str:
        """Take the folder of a plan's files, which goes from where it was; give the plan's name."""
        name = _name(sorted(made.iterdir()))
        self.folder.mkdir(parents=True, exist_ok=True, mode=0o700)
        place = self.folder / name
        if place.is_dir():
            shutil.rmtree(made)
        else:
            # From another disk a folder is copied file by file, which nobody may see half done.
            aside = self.folder / f"{uuid.uuid4().hex}{_ASIDE}"
            shutil.move(made, aside)
            try:
                aside.rename(place)
            except OSError:
                shutil.rmtree(aside)
        with suppress(OSError):
            place.touch()
        self._make_room(newest=name)
        return name

    def find(self, plan: str, file: str) -> Path:
        """Give where a file of a plan stands.

        Raises:
            NotFoundError: When the plan is no longer kept, or has no such file.
        """
        # A name that was sent is compared, and never opened as a path.
        for place in _listed(self.folder):
            if place.name == plan:
                for found in _listed(place):
                    if found.name == file:
                        return found
                raise NotFoundError(file, what="file in this plan")
        raise NotFoundError(plan, what="plan that is still kept,")

    def _make_room(self, *, newest: str) -> None:
        """Remove what is too old or too much, but never the plan that was just made."""
        used_bytes = 0
        plans = [(_touched(place), place) for place in _listed(self.folder)]
        for number, (at_seconds, place) in enumerate(sorted(plans, reverse=True), start=1):
            used_bytes += sum(_size(file) for file in _listed(place))
            is_old = self.now_seconds() - at_seconds > self.most_seconds
            if place.name != newest and (
                is_old or number > self.most_plans or used_bytes > self.most_bytes
            ):
                shutil.rmtree(place, ignore_errors=True)


def _name(files: Sequence[Path]) -> str:
    digest = hashlib.sha256()
    for file in files:
        with file.open("rb") as content:
            inner = hashlib.file_digest(content, "sha256").hexdigest()
        digest.update(f"{file.name}\n{inner}\n".encode())
    return digest.hexdigest()


def _listed(folder: Path) -> list[Path]:
    """List what is there; a folder that was removed meanwhile holds nothing."""
    with suppress(OSError):
        return sorted(folder.iterdir())
    return []


def _touched(place: Path) -> float:
    with suppress(OSError):
        return place.stat().st_mtime
    return 0.0


def _size(file: Path) -> int:
    with suppress(OSError):
        return file.stat().st_size
    return 0
