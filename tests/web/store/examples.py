"""Requests made of the examples in the description, and a store in which they make sense."""

from __future__ import annotations

import io
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any
from urllib.parse import quote

import httpx
import pikepdf
from fastapi import FastAPI

from service.cards.fingerprint import LETTERS
from service.geometry import Insets
from service.keeping.previews.kept_plans import FOLDER
from service.keeping.printing.printers_file import keep_saved
from service.keeping.today import compose_today
from service.records.mapping.mapping import ColumnMapping
from service.records.record import PhotoRole
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from service.sheets.correction import Correction
from service.sheets.printers.printer import Printer, TrayCorrection
from service.sheets.printers.saved import Saved
from service.store.kept.imports import note_import
from service.store.kept.mappings import save_mapping
from service.store.kept.outs import Slip, note_out
from service.store.kept.tasks import add_task
from service.store.open import open_folder, reading, writing
from service.store.printed.card import MadeCard, NewRun, RunFile, describe_card
from service.store.printed.runs import save_run
from service.store.shelf.files import open_shelf
from service.store.shelf.photos import BroughtPhoto, bring_photos
from service.web.description import EXAMPLE, describe
from service.web.store.routes import router
from tests.web.sent import PHOTOS
from tests.web.store.opened import BOX, MOMENT, SPIKE, STAMP

STOCKS = {"end-label": "A4 2x4 99.1x67.7"}

PRINTERS = Saved(
    (
        Printer(
            "Office copier",
            Insets(4.2, 4.2, 12.0, 4.2),
            (
                TrayCorrection(
                    "2", "", Correction(shift_x_mm=-2.0, shift_y_mm=-1.0), 0.1, MOMENT.date()
                ),
            ),
        ),
    )
)

Json = dict[str, Any]


def add_run(folder: Path) -> None:
    """Remember a run of every card of the box, an object that is out, a task, and a printer."""
    engine = open_folder(folder)
    with reading(engine) as connection:
        cards = compose_today(connection, PangoRuler(FONTS_CONF), [BOX]).standing_cards
    made = [_place(describe_card(card)) for card in cards]
    made.append(_of_other_words(made[0]))
    shelf = open_shelf(folder / "files", scratch=folder)
    blank = _blank_pdf()
    pdf = shelf.put(blank, ".pdf")
    front = shelf.put(PHOTOS / "1931.14.7_front.jpg", ".jpg")
    photo = BroughtPhoto(SPIKE, "1931.14.7_front.jpg", PhotoRole.FRONT, front)
    names = dict.fromkeys(card.file for card in made)
    files = [
        RunFile(name, pdf.sha256, pdf.length_bytes, name[:-4].split(", ")[1]) for name in names
    ]
    with writing(engine) as connection:
        save_run(connection, NewRun(tuple(made), tuple(files)), stamp=STAMP)
        bring_photos(connection, [photo], stamp=STAMP)
        note_out(connection, Slip(SPIKE, BOX), stamp=STAMP)
        example = ColumnMapping(headings=(("Inventarnummer", "object_number"),))
        note_import(connection, "export.csv", "a" * 64, {}, stamp=STAMP)
        save_mapping(connection, "Catalogue export", example, stamp=STAMP)
        add_task(connection, "print-0", "print", {}, stamp=STAMP)
    engine.dispose()
    keep_saved(folder, PRINTERS)
    plan = folder / FOLDER / ("5f" * 32)
    plan.mkdir(parents=True)
    (plan / f"end-label, {STOCKS['end-label']}.pdf").write_bytes(blank)


def _blank_pdf() -> bytes:
    target = io.BytesIO()
    with pikepdf.new() as pdf:
        pdf.add_blank_page(page_size=(595, 842))
        pdf.save(target)
    return target.getvalue()


def _place(card: MadeCard) -> MadeCard:
    stock = STOCKS.get(card.kind, "A4 card")
    return replace(card, file=f"{card.kind}, {stock}.pdf", places=((1, card.side),))


def _of_other_words(card: MadeCard) -> MadeCard:
    """Give a second copy from before a change of words, with the letters that are shown.

    The letters of today's cards change whenever the service words something anew.
    """
    letters = document()["components"]["schemas"]["AttachmentBody"]["examples"][0]["letters"]
    value = sum(LETTERS.index(sign) * len(LETTERS) ** at for at, sign in enumerate(letters))
    return replace(card, fingerprint=f"{value:016x}{'0' * 48}", copy=2)


def list_examples() -> Iterator[tuple[str, str, int]]:
    """Name every path and method of the store, and each example of its body by number."""
    for path, operations in document()["paths"].items():
        for method, operation in operations.items():
            for at in range(max(1, len(_examples_of(operation)))):
                yield path, method, at


@cache
def document() -> Json:
    """Give the description of the paths of the store alone; it takes most of a second to make."""
    app = FastAPI()
    app.include_router(router)
    return describe(app)


def send_example(client: httpx.Client, path: str, method: str, at: int) -> httpx.Response:
    """Send a request that the description shows, with the example of that number as its body."""
    operation = document()["paths"][path][method]
    by_place: dict[str, Json] = {"path": {}, "query": {}, "header": {}}
    for parameter in operation.get("parameters", []):
        examples = parameter["schema"].get("examples", [])
        if examples:
            by_place[parameter["in"]][parameter["name"]] = examples[0]
    filled = path
    for name, value in by_place["path"].items():
        filled = filled.replace(f"{{{name}}}", quote(str(value)))
    if "If-Match" in {each["name"] for each in operation.get("parameters", [])}:
        # Where no tag is shown, the one that was read is meant.
        by_place["header"].setdefault("If-Match", _read_tag(client, filled, method))
    sent = _bodies(operation, at)
    if method == "put" and "record" in client.get(filled).json():
        sent = {"json": {"record": client.get(filled).json()["record"]}}
    return client.request(
        method, filled, params=by_place["query"], headers=by_place["header"], **sent
    )


def _read_tag(client: httpx.Client, path: str, method: str) -> str:
    return client.get(path).headers["etag"] if method in {"put", "patch"} else ""


def _examples_of(operation: Json) -> list[Json]:
    for body in operation.get("requestBody", {}).get("content", {}).values():
        name = body["schema"]["$ref"].rsplit("/", 1)[-1]
        examples: list[Json] = document()["components"]["schemas"][name]["examples"]
        return examples
    return []


def _bodies(operation: Json, at: int) -> Json:
    for example in _examples_of(operation)[at : at + 1]:
        if "application/json" in operation["requestBody"]["content"]:
            return {"json": example}
        words = {field: text for field, text in example.items() if isinstance(text, str)}
        named = {field: names for field, names in example.items() if field not in words}
        return {
            "data": words,
            "files": [(field, _open(file)) for field, names in named.items() for file in names],
        }
    return {}


def _open(name: str) -> tuple[str, bytes]:
    path = EXAMPLE.parent / name if (EXAMPLE.parent / name).is_file() else PHOTOS / name
    return name, path.read_bytes()
