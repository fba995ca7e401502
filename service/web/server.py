"""Listening: a socket, the presses, the store, and the server that joins them."""

from __future__ import annotations

import contextlib
import getpass
import logging
import signal
import socket
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager

import uvicorn

from service.config import PREFIX, Settings
from service.errors import ConfigError
from service.jobs.open import JobsSetup, open_jobs
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from service.web.app import make_app
from service.web.guard import LOOPBACK
from service.web.press import open_presses
from service.web.store.counter import Backroom, Counter, read_clock
from service.wiring import open_bench, open_desk

_GRACE_SECONDS = 10


def serve(settings: Settings, say_address: Callable[[str], None]) -> None:
    """Listen until told to stop; `say_address` is told where, once that is sure.

    Raises:
        ConfigError: When the address is not this machine's, or taken.
    """
    # The server sends itself the signal that ended it once more; the presses must still be closed.
    signal.signal(signal.SIGTERM, _leave)
    with open_server(settings) as (server, listener), contextlib.suppress(KeyboardInterrupt):
        say_address(address_of(listener))
        server.run(sockets=[listener])


@contextmanager
def open_server(settings: Settings) -> Iterator[tuple[uvicorn.Server, socket.socket]]:
    """Open the socket and the presses; the server is not yet running.

    Raises:
        ConfigError: When the address is not this machine's, or taken.
        StoreTooNewError: When a newer version of the service has changed the store.
    """
    with (
        _listen(settings) as listener,
        open_presses(settings) as presses,
        _open_counter(settings) as counter,
    ):
        # It logs each body that is no form, which any client can send without end.
        logging.getLogger("python_multipart").setLevel(logging.ERROR)
        config = uvicorn.Config(
            make_app(presses, settings.host, counter=counter, default_actor=_name_actor(settings)),
            http="h11",
            ws="none",
            lifespan="off",
            log_level="warning",
            access_log=False,
            server_header=False,
            timeout_graceful_shutdown=_GRACE_SECONDS,
        )
        yield uvicorn.Server(config), listener


@contextmanager
def _open_counter(settings: Settings) -> Iterator[Counter | None]:
    """Open the store, but for this machine only: as long as there are no users, nobody else's.

    Raises:
        StoreTooNewError: When a newer version of the service has changed the store.
        ConfigError: When another process does the tasks of this store under the same slot.
    """
    if settings.host not in LOOPBACK:
        yield None
        return
    turn = threading.Lock()
    setup = JobsSetup(read_clock, settings.slot, turn)
    with (
        open_desk(settings) as desk,
        open_bench(settings) as bench,
        open_jobs(desk, setup) as line,
    ):
        yield Counter(desk, PangoRuler(FONTS_CONF), Backroom(line, turn, bench))


def _name_actor(settings: Settings) -> str:
    """Name who makes the changes of pages until a reader gives a name; empty where unknown."""
    try:
        return settings.actor or getpass.getuser()
    except (KeyError, OSError, ImportError):
        return ""


def address_of(listener: socket.socket) -> str:
    """Give the address people type."""
    host, port = listener.getsockname()[:2]
    return f"http://[{host}]:{port}" if ":" in host else f"http://{host}:{port}"


def _leave(_signal: int, _frame: object) -> None:
    raise SystemExit(0)


def _listen(settings: Settings) -> socket.socket:
    """Take the address, so that it is sure before anything is said.

    Raises:
        ConfigError: When it is not this machine's, or taken.
    """
    family = socket.AF_INET6 if ":" in settings.host else socket.AF_INET
    try:
        return socket.create_server((settings.host, settings.port), family=family)
    except OSError as error:
        setting = f"{PREFIX}HOST={settings.host} {PREFIX}PORT={settings.port}"
        raise ConfigError(setting, reason=error.strerror or str(error)) from None
