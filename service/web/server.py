"""Listening: a socket, the presses, and the server that joins them."""

from __future__ import annotations

import contextlib
import logging
import signal
import socket
from collections.abc import Callable, Iterator
from contextlib import contextmanager

import uvicorn

from service.config import PREFIX, Settings
from service.errors import ConfigError
from service.web.app import make_app
from service.web.press import open_presses

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
    """
    with _listen(settings) as listener, open_presses(settings) as presses:
        # It logs each body that is no form, which any client can send without end.
        logging.getLogger("python_multipart").setLevel(logging.ERROR)
        config = uvicorn.Config(
            make_app(presses, settings.host),
            http="h11",
            ws="none",
            lifespan="off",
            log_level="warning",
            access_log=False,
            server_header=False,
            timeout_graceful_shutdown=_GRACE_SECONDS,
        )
        yield uvicorn.Server(config), listener


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
