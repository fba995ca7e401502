"""The hash of everything that decides how a template is inked.

Known without importing the layout engine, which must not see the fonts of the system.
"""

from __future__ import annotations

import hashlib
import sys
from collections.abc import Iterator
from functools import cache
from importlib.metadata import version
from pathlib import Path

import cffi

from service.render.task import FONTS_CONF, TEMPLATES

_RENDER = Path(__file__).parents[1]
_SOURCES = ("frames", "plates", "typeset", "context.py", "draw.py", "pango.py")
"""What measures a frame and what it was compared with: no number has to be raised by hand."""
_ENGINES = ("weasyprint", "pydyf", "tinycss2", "cssselect2")
_PANGO = {"darwin": "libpango-1.0.dylib", "win32": "pango-1.0-0.dll"}


@cache
def frames_sha256(templates: Path = TEMPLATES) -> str:
    """Name the templates of a folder, the fonts, the engines and our code, as they are at first."""
    digest = hashlib.sha256()
    for part in _parts(templates):
        digest.update(len(part).to_bytes(8, "big") + part)
    return digest.hexdigest()


def _parts(templates: Path) -> Iterator[bytes]:
    for name in _SOURCES:
        for path in sorted((_RENDER / name).rglob("*.py")) or [_RENDER / name]:
            yield path.relative_to(_RENDER).as_posix().encode()
            yield path.read_bytes()
    yield from (f"{name} {version(name)}".encode() for name in _ENGINES)
    yield _pango_version()
    folders = (templates / "print", templates / "pictograms", FONTS_CONF.parent)
    for folder in folders:
        for path in sorted(folder.rglob("*")):
            if path.is_file() and path.suffix in _SUFFIXES:
                yield path.relative_to(folder).as_posix().encode()
                yield _stamp(path) if path.suffix == _FONT else path.read_bytes()


_FONT = ".ttf"
_SUFFIXES = frozenset({".html", ".css", ".svg", _FONT, ".conf", ".toml"})


def _stamp(path: Path) -> bytes:
    """Name a large file without reading it; one that was only copied costs a measurement."""
    found = path.stat()
    return f"{found.st_size} {found.st_mtime_ns}".encode()


def _pango_version() -> bytes:
    ffi = cffi.FFI()
    ffi.cdef("const char *pango_version_string(void);")
    library = ffi.dlopen(_PANGO.get(sys.platform, "libpango-1.0.so.0"))
    return bytes(ffi.string(library.pango_version_string()))
