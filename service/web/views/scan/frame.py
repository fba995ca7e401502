"""The frame of the scan page: one small style within it, nothing that is loaded, no cookie."""

from __future__ import annotations

import base64
import hashlib
from collections.abc import Mapping
from functools import cache

from fastapi import Request
from fastapi.responses import HTMLResponse

from service.render.task import TEMPLATES
from service.web.views.shell.page import fill_page, make_shell

_WEB = TEMPLATES / "web"
_STYLE_PARTS = (_WEB / "style" / "10-tokens.css", _WEB / "scan" / "scan.css")


def show_small(request: Request, name: str, values: Mapping[str, object]) -> HTMLResponse:
    """Fill a template; its page may use the one style within it and nothing else."""
    style = read_style()
    text = fill_page(make_shell(request), name, {**values, "style": style})
    return HTMLResponse(text, headers={"Content-Security-Policy": policy_for(style)})


def policy_for(style: str) -> str:
    """Allow the one style of a page by its digest (W3C, Content Security Policy Level 3)."""
    digest = base64.b64encode(hashlib.sha256(style.encode()).digest()).decode("ascii")
    return (
        f"default-src 'none'; style-src 'sha256-{digest}'; base-uri 'none'; form-action 'self';"
        " frame-ancestors 'none'"
    )


@cache
def read_style() -> str:
    """Read the style: the colours of all pages, and what this one needs."""
    return "\n".join(part.read_text(encoding="utf-8") for part in _STYLE_PARTS)
