"""Styles, scripts and fonts of the pages: each under an address that names its content."""

from __future__ import annotations

import gzip
import hashlib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, cached_property

from fastapi import APIRouter, Request, Response

from service.render.task import TEMPLATES
from service.web.access.gate import OPEN, GatedRoute
from service.web.replies.refusals import Refusal, RefusedError

router = APIRouter(route_class=GatedRoute)

_WEB = TEMPLATES / "web"
_FOLDERS = (
    *(_WEB / name for name in ("scripts", "vendor", "fonts", "drawings")),
    TEMPLATES / "pictograms",
)
_MEDIA_TYPES = {
    ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".woff2": "font/woff2",
    ".svg": "image/svg+xml",
}
STYLE = "underlid.css"
"""The one style of all pages: the files of `templates/web/style`, in the order of their names."""
_SHOWN_FOR_A_YEAR = "public, max-age=31536000, immutable"


@dataclass(frozen=True)
class Asset:
    """A file that pages ask for; `digest` names its content."""

    name: str
    data: bytes
    media_type: str

    @cached_property
    def packed(self) -> bytes:
        """Give the content as gzip (RFC 1952), for a slow line; pages themselves go unpacked.

        A page that holds a secret beside what somebody else chose must not be: its length would
        tell of the secret.
        """
        return gzip.compress(self.data, mtime=0)

    @cached_property
    def digest(self) -> str:
        """Give the first letters of the SHA-256, enough to tell one content from the next."""
        return hashlib.sha256(self.data).hexdigest()[:16]

    @property
    def path(self) -> str:
        """Give the address, which changes with the content and so may be kept by browsers."""
        return f"/assets/{self.digest}/{self.name}"


@cache
def load_assets() -> Mapping[str, Asset]:
    """Read every file that pages may ask for, by name."""
    files = [
        path
        for folder in _FOLDERS
        for path in sorted(folder.glob("*"))
        if path.suffix in _MEDIA_TYPES
    ]
    assets = {
        path.name: Asset(path.name, path.read_bytes(), _MEDIA_TYPES[path.suffix]) for path in files
    }
    return assets | {STYLE: _join_style(assets)}


def find_asset(name: str) -> str:
    """Give the address of a file, for templates.

    Raises:
        KeyError: When there is none of that name.
    """
    return load_assets()[name].path


@router.get("/assets/{digest}/{name}", include_in_schema=False, dependencies=[OPEN])
def asset(request: Request, digest: str, name: str) -> Response:
    """Give a file; under an address of another content there is nothing.

    Raises:
        RefusedError: When there is no such file.
    """
    found = load_assets().get(name)
    if found is None or found.digest != digest:
        raise RefusedError(Refusal.NOT_FOUND, "There is no such file.")
    headers = {"Cache-Control": _SHOWN_FOR_A_YEAR, "Vary": "Accept-Encoding"}
    takes_gzip = "gzip" in request.headers.get("accept-encoding", "")
    if takes_gzip and len(found.packed) < len(found.data):
        headers["Content-Encoding"] = "gzip"
        return Response(found.packed, media_type=found.media_type, headers=headers)
    return Response(found.data, media_type=found.media_type, headers=headers)


def _join_style(assets: Mapping[str, Asset]) -> Asset:
    """Join the style; fonts are named in it by their addresses."""
    parts = sorted((_WEB / "style").glob("*.css"))
    text = "\n".join(part.read_text(encoding="utf-8") for part in parts)
    for name, font in assets.items():
        text = text.replace(f"url({name})", f"url({font.path})")
    return Asset(STYLE, text.encode(), _MEDIA_TYPES[".css"])
