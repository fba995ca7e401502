"""The description of the API: the OpenAPI document with its example, and a page to read it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from html import escape
from pathlib import Path
from typing import Any

from fastapi import FastAPI
from fastapi.openapi.utils import get_openapi

from service.web.replies.problems import Problem

EXAMPLE = Path(__file__).parents[2] / "sample_records" / "one_box.json"
_NOTE = (
    "Prints lid cards, end labels, cover cards and contents lists for museum storage. Nothing is"
    " kept but thumbnails; no account is needed."
)
_BODY = "multipart/form-data"


def describe(app: FastAPI) -> dict[str, Any]:
    """Build the OpenAPI document; the posts carry an example that can be sent as it stands."""
    document = get_openapi(title="Underlid", version="1", description=_NOTE, routes=app.routes)
    schemas = document["components"]["schemas"]
    schemas["Problem"] = Problem.model_json_schema(ref_template="#/components/schemas/{model}")
    schemas["Problem"].pop("$defs", None)
    example = {"records": EXAMPLE.read_text(encoding="utf-8"), "kind": ["lid-card"]}
    for operations in document["paths"].values():
        for operation in operations.values():
            if "requestBody" in operation:
                body = operation["requestBody"]["content"][_BODY]
                body["example"] = example
                body["encoding"] = {"records": {"contentType": "application/json"}}
    return document


def write_page(document: Mapping[str, Any]) -> str:
    """Write the description as a plain page, which loads nothing."""
    body = "".join(_write_paths(document))
    return (
        '<!doctype html><html lang="en"><meta charset="utf-8"><title>Underlid: the API</title>'
        f"<h1>Underlid: the API</h1><p>{escape(_NOTE)}</p>"
        f'<p>The whole of it, for programs: <a href="/openapi.json">/openapi.json</a></p>{body}'
    )


def _write_paths(document: Mapping[str, Any]) -> Iterator[str]:
    for path, operations in document["paths"].items():
        for method, operation in operations.items():
            yield f"<h2><code>{method.upper()} {escape(path)}</code></h2>"
            for paragraph in operation["description"].split("\n\n"):
                yield f"<p>{escape(paragraph)}</p>"
            if "requestBody" in operation:
                yield from _write_fields(document["components"]["schemas"]["PrintForm"])


def _write_fields(schema: Mapping[str, Any]) -> Iterator[str]:
    yield "<dl>"
    for name, field in schema["properties"].items():
        yield f"<dt><code>{escape(name)}</code></dt><dd>{escape(field['description'])}</dd>"
    yield "</dl>"
