"""The one way in: make ready what is missing, then step aside."""

from __future__ import annotations

import importlib
import os
import subprocess
import sys
from collections.abc import Sequence

from service.bootstrap import checks, environment, libraries, system_files
from service.bootstrap.words import StoppedError, is_root, say


def main(arguments: Sequence[str]) -> int:
    """Run the service or its checks with `arguments`, setting up first where needed.

    `--yes` agrees to whatever the set-up has to install; it is not handed on.
    """
    wanted = [argument for argument in arguments if argument != "--yes"]
    try:
        return _start(wanted, agreed="--yes" in arguments)
    except StoppedError as stopped:
        say(str(stopped))
        return 1


def _start(arguments: list[str], *, agreed: bool) -> int:
    if system_files.search_variables(os.environ):
        # A process looks for libraries where its environment said when it began.
        return _become(sys.executable, arguments)
    testing = arguments[:1] == ["test"]
    lock = environment.DEV_LOCK if testing else environment.RUNTIME_LOCK
    ready = environment.is_ready(lock)
    libraries.add(
        libraries.missing_libraries(),
        pip=not ready and environment.needs_pip(),
        as_root=is_root(),
        agreed=agreed,
    )
    if not ready:
        environment.install(lock)
    elif environment.is_running_inside():
        return checks.run_all(arguments[1:]) if testing else _step_aside(arguments)
    return _become(str(environment.PYTHON), arguments)


def _step_aside(arguments: list[str]) -> int:
    # By name and late: only the finished environment can import the rest of the service.
    run = importlib.import_module("service.cli.main").run
    return int(run(arguments))


def _become(python: str, arguments: list[str]) -> int:
    """Go on as another Python; on Windows as its parent, since exec would lose the terminal."""
    command = [python, "-m", "service", *arguments]
    variables = {
        **os.environ,
        **system_files.search_variables(os.environ),
        **environment.engine_variables(),
    }
    if os.name != "nt":
        os.execve(python, command, variables)
    return subprocess.call(command, env=variables)
