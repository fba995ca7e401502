"""A service of its own in a process of its own, over a store that a test may change."""

from __future__ import annotations

import os
import re
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

ROOT = Path(__file__).parents[2]
_ADDRESS = re.compile(r"Listening on (http\S+) ")
_PATIENCE_SECONDS = 20


@contextmanager
def served(data: Path) -> Iterator[str]:
    """Run the service over the store in a folder, and give its address."""
    environment = os.environ | {  # noqa: TID251 - tests are an entry point
        "UNDERLID_PORT": "0",
        "UNDERLID_DATA": str(data),
        "UNDERLID_ACTOR": "Ada Quill",
        "UNDERLID_PROCESSES": "1",
    }
    command = [sys.executable, "-m", "service", "serve"]
    with subprocess.Popen(
        command, cwd=ROOT, env=environment, stderr=subprocess.PIPE, text=True
    ) as process:
        try:
            assert process.stderr is not None
            found = _ADDRESS.match(process.stderr.readline())
            assert found is not None, "the service did not say where it listens"
            yield found[1]
        finally:
            process.send_signal(signal.SIGTERM)
            process.wait(timeout=_PATIENCE_SECONDS)
