"""Writing a file whole or not at all."""

from __future__ import annotations

import contextlib
import os
import tempfile
from pathlib import Path


def write_whole(path: Path, data: bytes) -> None:
    """Write beside the place, flush, rename, flush the folder: after a power cut whole or absent.

    Raises:
        OSError: When the folder cannot be written.
    """
    handle, aside = tempfile.mkstemp(dir=path.parent, prefix=".", suffix=".part")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        Path(aside).replace(path)
    except BaseException:
        Path(aside).unlink(missing_ok=True)
        raise
    _flush_folder(path.parent)


def _flush_folder(folder: Path) -> None:
    # Windows opens no folders; there the file system keeps the rename by itself.
    with contextlib.suppress(PermissionError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
