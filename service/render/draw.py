"""Pages as ink: templates filled and laid out by WeasyPrint, one PDF page for each face.

Runs in a child process (see `worker`), which is given `FONTCONFIG_FILE` and `SOURCE_DATE_EPOCH`
before it imports this file, so that only the shipped fonts can be chosen and the same pages give
the same bytes. The fetcher knows our own addresses and nothing else. Anything the engine logs is an
error: it only logs what a reader would call a fault.
"""

from __future__ import annotations

import gc
import logging
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any, Self
from xml.etree.ElementTree import Element

import pydyf
from jinja2 import Environment, FileSystemLoader, StrictUndefined
from jinja2 import TemplateError as JinjaError
from weasyprint import HTML
from weasyprint.text.fonts import FontConfiguration
from weasyprint.urls import FatalURLFetchingError, URLFetcher, URLFetcherResponse

from service.errors import AssetError, EngineComplaintError, TemplateError
from service.render.context import (
    MARK_ADDRESS,
    PHOTO_ADDRESS,
    Picture,
    make_document,
)
from service.render.task import TEMPLATES, DrawTask

_BASE_ADDRESS = "underlid:print/"


def draw_pages(task: DrawTask) -> bytes:
    """Draw pages into one PDF, in order, each at its finished size.

    Raises:
        TemplateError: When a template asks for what its context does not hold.
        AssetError: When a template asks for anything but our own files.
        EngineComplaintError: When the engine logs anything.
    """
    return draw_html(fill_templates(task), task.pictures, task.templates)


def draw_html(html: str, pictures: Mapping[str, Picture], templates: Path = TEMPLATES) -> bytes:
    """Draw a filled document, which may name our own files and the pictures handed in.

    Raises:
        AssetError: When it asks for anything but our own files.
        EngineComplaintError: When the engine logs anything.
    """
    fetcher = _OwnFiles(pictures, templates)
    with _Listener() as listener:
        try:
            document = HTML(string=html, url_fetcher=fetcher, base_url=_BASE_ADDRESS).render(
                font_config=_fonts(), presentational_hints=False
            )
            pdf: bytes = document.write_pdf(finisher=_drop_empty_strings)
        except FatalURLFetchingError as error:  # A BaseException: it must not pass as a crash.
            raise AssetError(str(error)) from None
    if listener.messages:
        raise EngineComplaintError(listener.messages)
    gc.collect()
    return pdf


def fill_templates(task: DrawTask) -> str:
    """Give the HTML of the pages.

    Raises:
        TemplateError: When a template asks for what its context does not hold.
    """
    document = make_document(task.pages, task.pictures)
    try:
        environment = _environment(task.templates)
        return environment.get_template("document.html").render(document=document)
    except JinjaError as error:
        raise TemplateError(document.pages[0].template, reason=str(error)) from None


def parse_html(html: str) -> Element:
    """Give the elements of a filled document as the engine sees them."""
    root: Element = HTML(string=html, base_url=_BASE_ADDRESS).etree_element
    return root


def _drop_empty_strings(_document: object, pdf: pydyf.PDF) -> None:
    """Take empty strings out of the text operators.

    The engine writes them between two shifts, around a mark set higher or lower than its line.
    They mean nothing, but PDFium then loses the shift behind them, and with it its place.
    """
    for item in pdf.objects:
        if isinstance(item, pydyf.Stream):
            item.stream = [
                part.replace(b"<>", b" ")
                if isinstance(part, bytes) and part.endswith(b"] TJ")
                else part
                for part in item.stream
            ]


@cache
def _environment(templates: Path) -> Environment:
    environment = Environment(
        loader=FileSystemLoader(templates / "print"), autoescape=True, undefined=StrictUndefined
    )
    environment.filters["mm"] = lambda length_mm: f"{length_mm:.4f}mm"
    environment.filters["pt"] = lambda size_pt: f"{size_pt:.3f}pt"
    return environment


@cache
def _fonts() -> FontConfiguration:
    return FontConfiguration()


class _OwnFiles(URLFetcher):  # type: ignore[misc] # the engine ships no types
    """Serves `underlid:` addresses from our templates and from the pictures handed in."""

    def __init__(self, pictures: Mapping[str, Picture], templates: Path) -> None:
        super().__init__(allowed_protocols=("underlid",), allow_redirects=False)
        self._pictures = {picture.sha256: picture for picture in pictures.values()}
        self._shipped = _shipped(templates)

    def fetch(self, url: str, headers: object = None) -> Any:  # noqa: ANN401, ARG002 - the engine's signature
        if url.startswith(PHOTO_ADDRESS):
            picture = self._pictures.get(url.removeprefix(PHOTO_ADDRESS))
            if picture:
                return URLFetcherResponse(url, picture.jpeg, {"Content-Type": "image/jpeg"})
        found = self._shipped.get(url)
        if found is None:
            raise FatalURLFetchingError(url)
        data, kind = found
        return URLFetcherResponse(url, data, {"Content-Type": kind})


@cache
def _shipped(templates: Path) -> dict[str, tuple[bytes, str]]:
    """Read every stylesheet and mark we ship, by the address a template uses."""
    styles = {
        f"underlid:print/{path.relative_to(templates / 'print').as_posix()}": (
            path.read_bytes(),
            "text/css",
        )
        for path in (templates / "print").rglob("*.css")
    }
    marks = {
        f"{MARK_ADDRESS}{path.stem}": (path.read_bytes(), "image/svg+xml")
        for path in (templates / "pictograms").glob("*.svg")
    }
    return styles | marks


class _Listener(logging.Handler):
    """Collects what the engine logs while it is entered."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.messages: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.messages.append(record.getMessage())

    def __enter__(self) -> Self:
        logging.getLogger("weasyprint").addHandler(self)
        return self

    def __exit__(self, *_reason: object) -> None:
        logging.getLogger("weasyprint").removeHandler(self)
