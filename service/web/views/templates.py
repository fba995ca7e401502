"""The templates of views: escaped, strict, and only our own."""

from __future__ import annotations

import base64
import hashlib
from collections.abc import Mapping
from functools import cache

from fastapi.responses import HTMLResponse
from jinja2 import Environment, FileSystemLoader, StrictUndefined

from service.render.task import TEMPLATES

_FOLDER = TEMPLATES / "web"


def show_view(name: str, values: Mapping[str, object]) -> HTMLResponse:
    """Fill a template; the page may use the style of the same name beside it and nothing else."""
    style = _read_style(name.replace(".html", ".css"))
    page = _environment().get_template(name).render(**values, style=style)
    return HTMLResponse(page, headers={"Content-Security-Policy": policy_for(style)})


def policy_for(style: str) -> str:
    """Allow the one style of a page by its digest (W3C, Content Security Policy Level 3)."""
    digest = base64.b64encode(hashlib.sha256(style.encode()).digest()).decode("ascii")
    return (
        f"default-src 'none'; style-src 'sha256-{digest}'; base-uri 'none'; form-action 'none';"
        " frame-ancestors 'none'"
    )


@cache
def _environment() -> Environment:
    return Environment(loader=FileSystemLoader(_FOLDER), autoescape=True, undefined=StrictUndefined)


@cache
def _read_style(name: str) -> str:
    return (_FOLDER / name).read_text(encoding="utf-8")
