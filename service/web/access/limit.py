"""A limit on how often one address may ask."""

from __future__ import annotations

import threading
import time
from collections import OrderedDict, deque
from collections.abc import Callable

WINDOW_SECONDS = 60.0
MOST_IN_WINDOW = 60
_MOST_ADDRESSES = 10_000
"""Beyond it the address that asked longest ago is forgotten, so that memory has a bound."""


class Limit:
    """Counts what each address asked within the last minute."""

    def __init__(
        self, most: int = MOST_IN_WINDOW, *, clock_seconds: Callable[[], float] = time.monotonic
    ) -> None:
        """Take how many are allowed in a minute, and a clock that only goes forward."""
        self._most = most
        self._clock_seconds = clock_seconds
        self._asked: OrderedDict[str, deque[float]] = OrderedDict()
        self._lock = threading.Lock()

    def allows(self, address: str) -> bool:
        """Say whether an address may ask now, and count it if so."""
        now_seconds = self._clock_seconds()
        with self._lock:
            times = self._asked.setdefault(address, deque())
            self._asked.move_to_end(address)
            while times and times[0] <= now_seconds - WINDOW_SECONDS:
                times.popleft()
            allowed = len(times) < self._most
            if allowed:
                times.append(now_seconds)
            if len(self._asked) > _MOST_ADDRESSES:
                self._asked.popitem(last=False)
        return allowed
