"""Things sent to be looked at, and what a small museum's own list of objects and boxes holds."""

from __future__ import annotations

import io

from service.keeping.desk import Desk
from service.keeping.intake.kept_files import KeptFiles, find_kept, keep_files

WITH_BOXES = b"Object no,Title,Box,Tray\nT.1,Lead,N-1,1\nT.2,Line,N-1,2\nT.3,Hook,,\n"
"""A list of objects with a column that says in which box each lies."""


def keep(desk: Desk, **files: bytes) -> KeptFiles:
    """Keep files, `__` in a name standing for a dot."""
    sent = [(name.replace("__", "."), io.BytesIO(data)) for name, data in files.items()]
    return find_kept(desk.data_folder, keep_files(desk, sent))
