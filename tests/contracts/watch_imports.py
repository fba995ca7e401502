"""Import every module of the service and print what each reads of environment, disk or network.

Run by `test_imports` as a child process in an empty folder with an empty environment. Only what
our own module level does is reported: whatever happens while another package is imported has the
import machinery between it and us on the stack.
"""

from __future__ import annotations

import importlib
import os
import sys
from collections.abc import Iterator
from pathlib import Path
from types import FrameType

ROOT = Path(__file__).parents[2]
WATCHED = ("open", "os.listdir", "os.scandir", "socket.", "sqlite3.", "subprocess.", "tempfile.")


def _culprit() -> str | None:
    """Name the module of ours that asked, or None where an import stands in between."""
    frame: FrameType | None = sys._getframe(2)  # noqa: SLF001  The stack is what is asked about.
    while frame is not None:
        if "importlib" in frame.f_code.co_filename:
            return None
        name = str(frame.f_globals.get("__name__"))
        if name.startswith("service"):
            return name
        frame = frame.f_back
    return None


def _report(event: str) -> None:
    if (module := _culprit()) is not None:
        print(f"{module}: {event}")  # noqa: T201  The parent reads this.


class _WatchedEnvironment(dict[str, str]):
    """The environment, telling who reads it."""

    def __getitem__(self, name: str) -> str:
        _report(f"reads {name}")
        return super().__getitem__(name)

    def __contains__(self, name: object) -> bool:
        _report(f"reads {name}")
        return super().__contains__(name)

    def __iter__(self) -> Iterator[str]:
        _report("reads the environment")
        return super().__iter__()

    def get(self, name: str, default: str | None = None) -> str | None:  # type: ignore[override]
        """Give a variable, telling who asks."""
        # pydantic asks whether its plugins are off whenever a class of settings is declared.
        if not name.startswith("PYDANTIC_"):
            _report(f"reads {name}")
        return super().get(name, default)


def _on_event(event: str, arguments: tuple[object, ...]) -> None:
    if event.startswith(WATCHED):
        _report(f"{event} {arguments[:1]}")


def _module_names() -> list[str]:
    paths = sorted((ROOT / "service").rglob("*.py"))
    parts = [path.relative_to(ROOT).with_suffix("").parts for path in paths]
    return [".".join(part) for part in parts if part[-1] not in {"__init__", "__main__"}]


sys.path.insert(0, str(ROOT))
names = _module_names()
os.environ = _WatchedEnvironment(os.environ)  # type: ignore[assignment]  # noqa: B003, TID251
sys.addaudithook(_on_event)
for module_name in names:
    importlib.import_module(module_name)
