"""The description of the API: the OpenAPI document with its examples, and a page to read it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from html import escape
from pathlib import Path
from typing import Any

from fastapi import FastAPI
from fastapi.openapi.utils import get_openapi

from service.store.people.role import Role
from service.web.access.cookies import LOCAL_NAME, SECURE_NAME
from service.web.access.gate import list_gates
from service.web.replies.problems import Problem
from service.web.store.asking import ACTOR

EXAMPLE = Path(__file__).parents[2] / "sample_records" / "one_box.json"
ROLE = "x-role"
_NOTE = (
    "Prints lid cards, end labels, cover cards and contents lists for museum storage."
    f" As long as there are no users only this machine is answered, and every change names whoever"
    f" makes it in the header {ACTOR}; the name goes into the history and is no proof of identity."
    " From the first user on everybody signs in: people with a session, whose cookie is set by POST"
    " /api/sessions, and programs with a token in the header Authorization. Each operation names"
    f" the role it needs under {ROLE}; whoever manages may also print, pack and view, and so on."
    " The examples are of the sample file one_box.json, with an empty box B-028 beside it."
)
_SCHEMES = {
    "session": {
        "type": "apiKey",
        "in": "cookie",
        "name": SECURE_NAME,
        "description": f"The cookie of a session; over http on this machine it is {LOCAL_NAME}.",
    },
    "token": {"type": "http", "scheme": "bearer"},
}
_FORM = "multipart/form-data"
_SHAPES = "#/components/schemas/"
_PRINT_FORM = _SHAPES + "PrintForm"

_Json = dict[str, Any]


def describe(app: FastAPI) -> _Json:
    """Build the OpenAPI document; whatever takes a body carries an example that can be sent."""
    document = get_openapi(title="Underlid", version="1", description=_NOTE, routes=app.routes)
    schemas = document["components"]["schemas"]
    schemas["Problem"] = Problem.model_json_schema(ref_template=_SHAPES + "{model}")
    schemas["Problem"].pop("$defs", None)
    document["components"]["securitySchemes"] = _SCHEMES
    for route, gate in list_gates(app.routes):
        for method in route.methods or ():
            operation = document["paths"].get(route.path_format, {}).get(method.lower())
            if operation is not None:
                _complete(operation, None if gate is None else gate.role)
    return document


def _complete(operation: _Json, role: Role | None) -> None:
    """Add what the signatures of the routes cannot say."""
    operation["security"] = [] if role is None else [{name: []} for name in _SCHEMES]
    if role is not None:
        operation[ROLE] = role.value
    form = operation.get("requestBody", {}).get("content", {}).get(_FORM)
    if form and form["schema"].get("$ref") == _PRINT_FORM:
        example = {"records": EXAMPLE.read_text(encoding="utf-8"), "kind": ["lid-card"]}
        form["example"] = example
        form["encoding"] = {"records": {"contentType": "application/json"}}


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
            yield f"<p>{_name_role(operation)}</p>"
            for paragraph in operation["description"].split("\n\n"):
                yield f"<p>{escape(paragraph)}</p>"
            yield "<dl>"
            for parameter in operation.get("parameters", ()):
                yield _write_field(parameter["name"], parameter)
            for content in operation.get("requestBody", {}).get("content", {}).values():
                name = content["schema"]["$ref"].removeprefix(_SHAPES)
                fields = document["components"]["schemas"][name]["properties"]
                yield from (_write_field(*field) for field in fields.items())
            yield "</dl>"


def _name_role(operation: Mapping[str, Any]) -> str:
    return f"Needs the role {operation[ROLE]}." if ROLE in operation else "Open to all."


def _write_field(name: str, said: Mapping[str, Any]) -> str:
    words = said.get("description") or said.get("title") or said.get("type", "")
    return f"<dt><code>{escape(name)}</code></dt><dd>{escape(words)}</dd>"
