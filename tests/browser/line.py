"""A line between browser and service that breaks in the middle of whatever is long."""

from __future__ import annotations

import socket
import threading
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from urllib.parse import urlsplit

_PORTION_BYTES = 1 << 16


class Line:
    """Hands bytes on both ways; while it is broken no connection takes more than its limit."""

    def __init__(self, target: tuple[str, int], most_bytes: int) -> None:
        """Lead to a service; nothing is cut before `break_it`."""
        self._target = target
        self._most_bytes = most_bytes
        self._is_broken = threading.Event()
        self.cuts = 0

    def break_it(self) -> None:
        """Cut each connection from now on once it has carried so much."""
        self._is_broken.set()

    def mend(self) -> None:
        """Let everything through again."""
        self._is_broken.clear()

    def serve(self, listener: socket.socket) -> None:
        """Take connections until the listener is closed."""
        while True:
            try:
                near, _ = listener.accept()
            except OSError:
                return
            far = socket.create_connection(self._target)
            for one, other, limit in ((near, far, self._most_bytes), (far, near, 0)):
                threading.Thread(target=self._carry, args=(one, other, limit), daemon=True).start()

    def _carry(self, source: socket.socket, target: socket.socket, limit: int) -> None:
        carried = 0
        with suppress(OSError):
            while portion := source.recv(_PORTION_BYTES):
                carried += len(portion)
                if limit and carried > limit and self._is_broken.is_set():
                    self.cuts += 1
                    break
                target.sendall(portion)
        for end in (source, target):
            with suppress(OSError):
                end.shutdown(socket.SHUT_RDWR)
            end.close()


@contextmanager
def broken_line(address: str, *, most_bytes: int) -> Iterator[tuple[Line, str]]:
    """Give a line to a service, and the address at its near end."""
    target = urlsplit(address)
    assert target.hostname is not None
    assert target.port is not None
    line = Line((target.hostname, target.port), most_bytes)
    with socket.create_server(("127.0.0.1", 0)) as listener:
        threading.Thread(target=line.serve, args=(listener,), daemon=True).start()
        yield line, f"http://127.0.0.1:{listener.getsockname()[1]}"
        # Whoever still waits for the next connection is woken.
        listener.shutdown(socket.SHUT_RDWR)
