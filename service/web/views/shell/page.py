"""Fills the template of a page: escaped, strict, in the reader's language, with our files alone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from fastapi import Request
from fastapi.responses import HTMLResponse
from jinja2 import Environment, FileSystemLoader, StrictUndefined

from service.languages.page_words import PageWords, list_page_languages, load_page_words
from service.languages.saying import said
from service.render.task import TEMPLATES
from service.web.access.form_tokens import FIELD
from service.web.access.handed import handed
from service.web.views.language.interpreter import VARY
from service.web.views.language.tables import spell
from service.web.views.language.telling import told
from service.web.views.shell.addresses import page_of_container, page_of_object, page_of_user
from service.web.views.shell.assets import find_asset
from service.web.views.shell.notice import COOKIE, Notice, read_notice
from service.web.views.shell.pictures import page_of_picture
from service.web.views.shell.reader import PageReader, read_reader

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self';"
    " img-src 'self' blob:; connect-src 'self'; manifest-src 'self'; worker-src 'self';"
    " form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
)
"""What a page may load (W3C, Content Security Policy Level 3): this service and nothing else."""


@dataclass(frozen=True, slots=True)
class Shell:
    """What the frame of every page needs.

    Attributes:
        reader: Who reads.
        here: The first part of the path, which the navigation marks.
        notice: What was just done, if anything.
        has_store: Whether the service keeps a store; without one there are few pages.
    """

    reader: PageReader
    here: str
    notice: Notice | None
    has_store: bool
    token_field: str = FIELD


def show_page(
    request: Request, name: str, values: Mapping[str, object], *, status: int = 200
) -> HTMLResponse:
    """Fill a template of `templates/web`.

    Raises `TemplateError` of Jinja2 when a value is missing: a page never shows a hole.
    """
    shell = make_shell(request)
    text = fill_page(shell, name, values)
    headers = {"Content-Security-Policy": POLICY, "Vary": VARY}
    response = HTMLResponse(text, status, headers=headers)
    if shell.notice is not None:
        response.delete_cookie(COOKIE, path="/")
    return response


def make_shell(request: Request) -> Shell:
    """Gather what the frame of a page needs from a request."""
    here = request.url.path.strip("/").partition("/")[0]
    has_store = handed(request, "counter") is not None
    return Shell(read_reader(request), here, read_notice(request), has_store)


def fill_page(shell: Shell, name: str, values: Mapping[str, object]) -> str:
    """Fill a template of `templates/web` and give its text.

    Raises `TemplateError` of Jinja2 when a value is missing: a page never shows a hole.
    """
    return _environment(shell.reader.words.code).get_template(name).render(**values, shell=shell)


@cache
def _environment(language: str) -> Environment:
    """Make the environment of a language; its words are extracted from the templates."""
    environment = Environment(
        loader=FileSystemLoader(TEMPLATES / "web"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        extensions=["jinja2.ext.i18n"],
    )
    words = load_page_words(language)
    environment.install_gettext_translations(words.messages, newstyle=True)  # type: ignore[attr-defined]
    environment.filters.update(_filters(words))
    environment.globals["asset"] = find_asset
    environment.globals["languages"] = list_page_languages()
    return environment


def _filters(words: PageWords) -> Mapping[str, object]:
    return {
        "day": words.write_day,
        "moment": words.write_moment,
        "container_page": page_of_container,
        "object_page": page_of_object,
        "picture": page_of_picture,
        "user_page": page_of_user,
        "said": said,
        "spelt": lambda code: said(spell(code)),
        "told": told,
    }
