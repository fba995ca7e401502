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
from service.web.app import Front, make_app
from service.web.press import open_presses
from service.web.sharing import check_reach, check_users, find_reach
from service.web.store.counter import Backroom, Counter, read_clock
from service.wiring import open_bench, open_desk

_GRACE_SECONDS = 10


def serve(settings: Settings, say_address: Callable[[str], None]) -> None:
    """Listen until told to stop; `say_address` is told where, once that is sure.

    Raises:
        ConfigError: When the address is not this machine's, or taken, or others would be answered
            without what that needs.
    """
    # The server sends itself the signal that ended it once more; the presses must still be closed.
    signal.signal(signal.SIGTERM, _leave)
    with open_server(settings) as (server, listener), contextlib.suppress(KeyboardInterrupt):
        say_address(address_of(listener, is_secure=bool(settings.certificate)))
        server.run(sockets=[listener])


@contextmanager
def open_server(settings: Settings) -> Iterator[tuple[uvicorn.Server, socket.socket]]:
    """Open the socket and the presses; the server is not yet running.

    Raises:
        ConfigError: When the address is not this machine's, or taken, or others would be answered
            without what that needs.
        StoreTooNewError: When a newer version of the service has changed the store.
    """
    check_reach(settings)
    with (
        _listen(settings) as listener,
        open_presses(settings) as presses,
        _open_counter(settings) as counter,
    ):
        # It logs each body that is no form, which any client can send without end.
        logging.getLogger("python_multipart").setLevel(logging.ERROR)
        reach = find_reach(settings, listener.getsockname()[1])
        front = Front(settings.hosts, settings.behind_proxy, _name_actor(settings), reach)
        config = uvicorn.Config(
            make_app(presses, settings.host, counter=counter, front=front),
            http="h11",
            ws="none",
            lifespan="off",
            log_level="warning",
            access_log=False,
            server_header=False,
            # What a proxy says is believed in one place, `service.web.access.proxy`.
            proxy_headers=False,
            ssl_certfile=settings.certificate or None,
            ssl_keyfile=settings.key or None,
            timeout_graceful_shutdown=_GRACE_SECONDS,
        )
        yield uvicorn.Server(config), listener


@contextmanager
def _open_counter(settings: Settings) -> Iterator[Counter]:
    """Open the store, for others than this machine only when they have to sign in.

    Raises:
        StoreTooNewError: When a newer version of the service has changed the store.
        ConfigError: When another process does the tasks of this store under the same slot, or the
            store has no user.
    """
    turn = threading.Lock()
    setup = JobsSetup(read_clock, settings.slot, turn)
    with open_desk(settings) as desk, open_bench(settings) as bench:
        check_users(settings, desk.engine)
        with open_jobs(desk, setup) as line:
            yield Counter(desk, PangoRuler(FONTS_CONF), Backroom(line, turn, bench))


def _name_actor(settings: Settings) -> str:
    """Name who makes the changes of pages until a reader gives a name; empty where unknown."""
    try:
        return settings.actor or getpass.getuser()
    except (KeyError, OSError, ImportError):
        return ""


def address_of(listener: socket.socket, *, is_secure: bool = False) -> str:
    """Give the address people type."""
    host, port = listener.getsockname()[:2]
    scheme = "https" if is_secure else "http"
    return f"{scheme}://[{host}]:{port}" if ":" in host else f"{scheme}://{host}:{port}"


def _leave(_signal: int, _frame: object) -> None:
    raise SystemExit(0)


def _listen(settings: Settings) -> socket.socket:
    """Take the address, so that it is sure before anything is said.

    Raises:
        ConfigError: When it is not this machine's, or taken.
    """
    family = socket.AF_INET6 if ":" in settings.host else socket.AF_INET
    try:
        listener = socket.create_server((settings.host, settings.port), family=family)
    except OSError as error:
        setting = f"{PREFIX}HOST={settings.host} {PREFIX}PORT={settings.port}"
        raise ConfigError(setting, reason=error.strerror or str(error)) from None
    # Connections inherit it. The event loop sets it for sockets made by protocol number alone, and
    # without it each answer waits some 40 ms for the acknowledgement of its own head (RFC 896).
    listener.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
    return listener
