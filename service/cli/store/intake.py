"""Taking records and photos in, first what would change, then the change; and handing them on."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from service.cards.words import count
from service.cli.at_desk import By, Json, answer, at_desk, leave, open_console
from service.cli.printing import show_progress, write_whole
from service.cli.report import count_findings, finding_as_data, show_findings
from service.cli.store.preview import preview_data, preview_lines
from service.findings import Finding
from service.keeping.desk import Desk
from service.keeping.imports import preview_import, summarise
from service.keeping.intake.reading import read_mapped
from service.keeping.photos.bring import BroughtPhotos, bring_in_bulk
from service.keeping.taking_in import take_in
from service.pipeline.read import open_source
from service.records.lido.export.write import note_left_out, write_lido
from service.store.history import Stamp
from service.store.load_records import load_collection
from service.store.open import reading

app = typer.Typer()


@app.command("import")
def import_(
    context: typer.Context,
    source: Annotated[
        Path, typer.Argument(help="A folder or an export file; README lists the kinds.")
    ],
    preview: Annotated[bool, typer.Option("--preview", help="Only say what would change.")] = False,
    mapping: Annotated[
        str, typer.Option("--mapping", help="Read the table by this saved mapping.")
    ] = "",
    by: By = "",
    as_json: Json = False,
) -> None:
    """Take records in; the same file again changes nothing. Photos beside them come too."""
    at = at_desk(context)
    with at.desk() as desk:
        if preview:
            findings = _preview(desk, source, mapping, as_json=as_json)
        else:
            findings = _take_in(desk, source, mapping, at.stamp(by), as_json=as_json)
    if not as_json:
        show_findings(open_console(), findings)
    leave(findings)


@app.command("export")
def export(
    context: typer.Context,
    target: Annotated[Path, typer.Argument(help="The LIDO file to write, such as records.xml.")],
    as_json: Json = False,
) -> None:
    """Write the objects as a LIDO 1.1 file, to hand on; restricted ones stay out."""
    with at_desk(context).store() as engine, reading(engine) as connection:
        collection = load_collection(connection)
    left_out = note_left_out(collection)
    written = len(collection.objects) - len(left_out)
    target.parent.mkdir(parents=True, exist_ok=True)
    write_whole(b"".join(write_lido(collection)), target)
    data = {"path": str(target), "objects": written, "findings": _as_data(left_out)}
    answer(data, [f"{target}: {count(written, 'object')}."], as_json=as_json)
    if not as_json:
        show_findings(open_console(), left_out)


@app.command("photos")
def photos(
    context: typer.Context,
    source: Annotated[Path, typer.Argument(help="A folder or a ZIP file of photos.")],
    by: By = "",
    as_json: Json = False,
) -> None:
    """Bring photos; each goes to the object whose number stands in its file name."""
    at, console = at_desk(context), open_console()
    with at.desk() as desk, show_progress(console) as tell:
        brought = bring_in_bulk(desk, source, stamp=at.stamp(by), on_progress=tell)
    data = {**_photo_data(brought), "findings": _as_data(brought.findings)}
    lines = [*_photo_lines(brought), f"{count_findings(brought.findings)}."]
    answer(data, lines, as_json=as_json)
    if not as_json:
        show_findings(console, brought.findings)
    leave(brought.findings)


def _preview(desk: Desk, source: Path, mapping: str, *, as_json: bool) -> tuple[Finding, ...]:
    """Say what would change."""
    collection = read_mapped(desk, open_source(source).files, mapping=mapping)
    plan = preview_import(desk.engine, collection)
    findings = (*collection.findings, *plan.findings)
    answer(preview_data(plan, findings), preview_lines(plan), as_json=as_json)
    return findings


def _take_in(
    desk: Desk, source: Path, mapping: str, stamp: Stamp, *, as_json: bool
) -> tuple[Finding, ...]:
    """Make the change, and say what was done."""
    with show_progress(open_console()) as tell:
        taken = take_in(desk, source, stamp=stamp, on_progress=tell, mapping=mapping)
    summary = summarise(taken.records.saved)
    data = {
        "import": taken.records.import_id,
        "summary": summary,
        "photos": _photo_data(taken.photos),
        "findings": _as_data(taken.findings),
    }
    lines = [f"Import {taken.records.import_id}: {_say(summary)}."]
    lines += _photo_lines(taken.photos) if taken.photos.matched else []
    answer(data, lines, as_json=as_json)
    return taken.findings


def _photo_data(brought: BroughtPhotos) -> dict[str, object]:
    matched = [
        {"file": one.file, "object_number": one.object_number, "role": one.role.value}
        for one in brought.matched
    ]
    return {"new": brought.new, "matched": matched}


def _photo_lines(brought: BroughtPhotos) -> list[str]:
    known = len(brought.matched) - brought.new
    return [f"{count(brought.new, 'new photo')}, {known} known already."]


def _as_data(findings: tuple[Finding, ...]) -> list[dict[str, str]]:
    return [finding_as_data(finding) for finding in findings]


def _say(summary: dict[str, int]) -> str:
    said = [f"{number} {what}" for what, number in summary.items() if number and what != "museum"]
    said += ["the museum's own choices"] if summary["museum"] else []
    changed = any(number for what, number in summary.items() if not what.endswith("unchanged"))
    return ", ".join(said or ["nothing"]) + ("" if changed else "; nothing has changed")
