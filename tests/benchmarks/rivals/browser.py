"""A headless browser driven over a pipe, by its own debugging protocol."""

from __future__ import annotations

import base64
import json
import os
import shutil
import subprocess
from pathlib import Path
from typing import Any

NAMES = ("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome")
FLAGS = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--no-first-run",
    "--disable-extensions",
    "--disable-background-networking",
    "--disable-sync",
    "--mute-audio",
)
# The protocol is spoken on descriptors 3 and 4, which a shell gives to the browser.
_ON_PIPE = 'exec "$@" 3<&0 4>&1 </dev/null >/dev/null 2>&1'
_PIECE_BYTES = 1 << 22


def find_browser() -> str | None:
    """Give the first browser of the system that can print; the shell starts fastest."""
    return next(filter(None, map(shutil.which, NAMES)), None)


class Browser:
    """One browser with one tab."""

    def __init__(self, program: str, profile: Path) -> None:
        """Start it and open the tab."""
        words = (program, *FLAGS, "--remote-debugging-pipe", f"--user-data-dir={profile}")
        self._process = subprocess.Popen(
            ["/bin/sh", "-c", _ON_PIPE, "sh", *words],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
        )
        self._asked = 0
        self._session = ""
        self._waiting = b""
        self._seen: list[str] = []
        target = self._call("Target.createTarget", url="about:blank")["targetId"]
        attached = self._call("Target.attachToTarget", targetId=target, flatten=True)
        self._session = attached["sessionId"]
        self._call("Page.enable")

    def print_page(self, address: str, out: Path, *, is_tagged: bool) -> None:
        """Load a page and write it as PDF."""
        self._seen.clear()
        self._call("Page.navigate", url=address)
        while "Page.loadEventFired" not in self._seen:
            self._seen.append(self._read().get("method", ""))
        printed = self._call(
            "Page.printToPDF",
            preferCSSPageSize=True,
            printBackground=True,
            generateTaggedPDF=is_tagged,
            transferMode="ReturnAsStream",
        )
        with out.open("wb") as file:
            is_whole = False
            while not is_whole:
                piece = self._call("IO.read", handle=printed["stream"], size=_PIECE_BYTES)
                file.write(base64.b64decode(piece["data"]))
                is_whole = piece["eof"]
        self._call("IO.close", handle=printed["stream"])

    def close(self) -> None:
        """Ask it to end, and wait."""
        self._session = ""
        self._call("Browser.close")
        self._process.communicate()

    def _call(self, method: str, **said: object) -> dict[str, Any]:
        """Ask for something and give the answer.

        Raises:
            RuntimeError: When the browser refuses.
        """
        self._asked += 1
        message: dict[str, object] = {"id": self._asked, "method": method, "params": said}
        if self._session:
            message["sessionId"] = self._session
        assert self._process.stdin
        self._process.stdin.write(json.dumps(message).encode() + b"\0")
        self._process.stdin.flush()
        while True:
            answer = self._read()
            if answer.get("id") == self._asked:
                if "error" in answer:
                    raise RuntimeError(answer["error"])
                return dict(answer["result"])
            self._seen.append(answer.get("method", ""))

    def _read(self) -> dict[str, Any]:
        """Read one message; a zero byte ends it.

        Raises:
            RuntimeError: When the browser has ended.
        """
        assert self._process.stdout
        pieces = [self._waiting]
        while b"\0" not in pieces[-1]:
            read = os.read(self._process.stdout.fileno(), _PIECE_BYTES)
            if not read:
                msg = "the browser has ended"
                raise RuntimeError(msg)
            pieces.append(read)
        message, _, self._waiting = b"".join(pieces).partition(b"\0")
        return dict(json.loads(message))
