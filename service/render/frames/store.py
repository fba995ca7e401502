"""Frames and marks kept on disk, so that the layout engine runs once for each change of a template.

Files are named by all that decides their content, written aside and put in place whole, so that
several processes may share a folder; a damaged file counts as absent.
"""

from __future__ import annotations

import contextlib
import os
import tempfile
from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from pathlib import Path
from typing import TypeVar

from service.errors import ServiceError
from service.geometry import Size
from service.render.frames.compile import FrameTask, compile_frame
from service.render.frames.frame import Frame, Look
from service.render.frames.kept import (
    frame_from_json,
    frame_to_json,
    marks_from_json,
    marks_to_json,
)
from service.render.frames.marks import draw_marks
from service.render.frames.versions import frames_sha256
from service.render.task import ENVIRONMENT, TEMPLATES
from service.render.worker import Workers

LIMIT_SECONDS = 120.0
_MARKS = "marks"
Argument = TypeVar("Argument")
Result = TypeVar("Result")


class FrameStore:
    """A folder of frames. Not for use by two threads at once; processes may share the folder.

    What is missing is measured in a child of the store's own, so that it may be asked while other
    children are at work. The child is started when it is first needed, and `close` ends it.
    """

    def __init__(self, folder: Path, *, templates: Path = TEMPLATES) -> None:
        """Keep frames of these templates in a folder, which is made when it is needed."""
        self._folder = folder
        self._templates = templates
        self._sha256 = frames_sha256(templates)
        self._frames: dict[str, Frame] = {}
        self._marks: Mapping[str, bytes] | None = None
        self._measurer = Workers(1, environment=ENVIRONMENT)

    def close(self) -> None:
        """End the child; the next measurement would start another."""
        self._measurer.__exit__()

    def find_or_make(self, kind: str, size: Size, looks: Iterable[Look]) -> Frame:
        """Give a frame that has a mould for each look and the static ink of the size.

        Raises:
            SlotRefusedError: When the template asks a slot for more than a mould can keep.
            ServiceError: When the engine cannot draw the template.
        """
        wanted = frozenset(looks)
        known = self._frames.get(kind)
        if known is None or not _has_all(known, size, wanted):
            # Another process, or another store of this one, may have measured what is missing.
            known = self._read(kind) or known
        if known and _has_all(known, size, wanted):
            self._frames[kind] = known
            return known
        moulds = dict(known.moulds) if known else {}
        made = self._measured(compile_frame, FrameTask(kind, size, wanted, moulds, self._templates))
        # Another process may have kept other looks meanwhile.
        kept = self._read(kind) or made
        frame = replace(
            made, moulds={**kept.moulds, **made.moulds}, statics={**kept.statics, **made.statics}
        )
        self._frames[kind] = frame
        self._write(kind, frame_to_json(frame))
        return frame

    def marks(self) -> Mapping[str, bytes]:
        """Give the operators of each mark by its code, to be drawn into the unit square.

        Raises:
            ServiceError: When the engine cannot draw one of them.
        """
        if self._marks is None:
            self._marks = self._find_marks()
        return self._marks

    def _find_marks(self) -> Mapping[str, bytes]:
        with contextlib.suppress(OSError, ValueError):
            return marks_from_json(self._path(_MARKS).read_text(encoding="ascii"))
        forms = self._measured(draw_marks, self._templates)
        self._write(_MARKS, marks_to_json(forms))
        return forms

    def _measured(self, measure: Callable[[Argument], Result], argument: Argument) -> Result:
        (result,) = self._measurer.run(measure, [argument], limit_seconds=LIMIT_SECONDS)
        if isinstance(result, ServiceError):
            raise result
        return result

    def _read(self, kind: str) -> Frame | None:
        with contextlib.suppress(OSError, ValueError):
            frame = frame_from_json(self._path(kind).read_text(encoding="ascii"))
            if (frame.kind, frame.sha256) == (kind, self._sha256):
                return frame
        return None

    def _path(self, name: str) -> Path:
        return self._folder / f"{name}-{self._sha256}.json"

    def _write(self, name: str, text: str) -> None:
        self._folder.mkdir(parents=True, exist_ok=True)
        with tempfile.NamedTemporaryFile(
            "w", encoding="ascii", dir=self._folder, suffix=".part", delete=False
        ) as aside:
            aside.write(text)
            aside.flush()
            os.fsync(aside.fileno())
        Path(aside.name).replace(self._path(name))


def _has_all(frame: Frame, size: Size, looks: frozenset[Look]) -> bool:
    return size in frame.statics and looks <= frame.moulds.keys()
