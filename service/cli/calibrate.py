"""The calibrate commands: a ruler sheet, what was measured on it, and what is kept of it."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Annotated

import typer

from service.cli.at_desk import now
from service.cli.own_stock import name_stock
from service.config import Settings
from service.errors import CalibrationError, UnknownPrinterError
from service.geometry import Insets
from service.keeping.paper.measured import (
    Measures,
    enter_measures,
    find_paper,
    forget_printer,
    place_of,
)
from service.keeping.printing.printers_file import keep_saved, load_saved
from service.render.ruler_sheet import draw_ruler_sheet
from service.sheets.calibration.calibrate import Calibration
from service.sheets.calibration.limits import describe
from service.sheets.calibration.ruler_page import ruler_page
from service.sheets.printers.printer import Printer, plain
from service.sheets.printers.saved import Saved, checked_edges, saved_as_data
from service.sheets.stocks import PAGES
from service.wiring import open_workshop

calibrate_app = typer.Typer(no_args_is_help=True, help="Make up for a printer that prints askew.")

Paper = Annotated[str, typer.Option(help=f"The ruler sheet's size: {', '.join(PAGES)}.")]
Named = Annotated[str, typer.Option("--printer", help="The printer, by the name you call it.")]
Tray = Annotated[str, typer.Option(help="The tray; without it, for every tray.")]
OnStock = Annotated[str, typer.Option("--stock", help="A stock; without it, for every stock.")]
Json = Annotated[bool, typer.Option("--json", help="Answer as one JSON document.")]


@calibrate_app.command("sheet")
def print_ruler_sheet(
    context: typer.Context,
    output: Annotated[Path, typer.Option("-o", "--output", help="The PDF to write.")],
    paper: Paper = "A4",
    *,
    as_json: Json = False,
) -> None:
    """Write the ruler sheet: print it at 100 % and measure its crosses."""
    settings = context.ensure_object(Settings)
    with open_workshop(settings.data, processes=1) as workshop:
        page = ruler_page(find_paper(paper), workshop.ruler)
        pdf = draw_ruler_sheet(page, workshop.frames)
    output.parent.mkdir(parents=True, exist_ok=True)
    output.write_bytes(pdf)
    if as_json:
        typer.echo(json.dumps({"path": str(output), "paper": paper}))
    else:
        typer.echo(f"{output}: print it at 100 % on plain {paper}; how to measure stands on it.")


@calibrate_app.command("enter")
def enter(  # noqa: PLR0913 - the options of a command are its arguments
    context: typer.Context,
    printer: Named,
    measured: Annotated[
        list[str] | None, typer.Argument(help="CROSS=ACROSS,DOWN in mm, such as A=15.25,14.75.")
    ] = None,
    *,
    tray: Tray = "",
    stock: OnStock = "",
    paper: Paper = "A4",
    edges: Annotated[
        str, typer.Option(help="What the printer cannot print, in mm: TOP,RIGHT,BOTTOM,LEFT.")
    ] = "",
    as_json: Json = False,
) -> None:
    """Work out a printer's correction from what was measured, show what is left over, and save it.

    Raises:
        CalibrationError: When nothing was typed, or what was typed cannot be right.
    """
    settings = context.ensure_object(Settings)
    measures = Measures(
        printer,
        measured or (),
        tray,
        name_stock(stock).name if stock else "",
        paper,
        _edges(edges) if edges else None,
    )
    entered = enter_measures(settings.data, measures, now().date())
    changed, found = entered.printer, entered.calibration
    typer.echo(_as_json(changed, found) if as_json else _in_words(changed, found, entered.path))


@calibrate_app.command("show")
def show(context: typer.Context, *, as_json: Json = False) -> None:
    """Show every printer with its trays, and the sheets that are part used."""
    settings = context.ensure_object(Settings)
    saved = load_saved(settings.data)
    if as_json:
        typer.echo(json.dumps(saved_as_data(saved), ensure_ascii=False, indent=2))
        return
    for printer in saved.printers:
        typer.echo(_printer_words(printer))
    for sheet in saved.used_sheets:
        used = ", ".join(str(position) for position in sorted(sheet.positions))
        typer.echo(f"Part-used sheet of {sheet.stock}: positions used: {used}")
    if saved == Saved():
        typer.echo("No printer was measured yet. Begin with: calibrate sheet -o ruler.pdf")


@calibrate_app.command("forget")
def forget(
    context: typer.Context,
    printer: Named = "",
    tray: Tray = "",
    stock: OnStock = "",
    *,
    sheet: Annotated[str, typer.Option(help="Forget the part-used sheet of this stock.")] = "",
) -> None:
    """Forget a printer, one of its corrections, or a part-used sheet.

    Raises:
        UnknownPrinterError: When there is nothing of that name.
        CalibrationError: When nothing is named.
    """
    settings = context.ensure_object(Settings)
    if sheet:
        keep_saved(settings.data, _forget_sheet(load_saved(settings.data), sheet))
    elif printer:
        forget_printer(settings.data, printer, tray=tray, stock=stock)
    else:
        raise CalibrationError(["name what to forget: --printer or --sheet"])
    typer.echo("Forgotten.")


def _forget_sheet(saved: Saved, stock: str) -> Saved:
    kept = tuple(each for each in saved.used_sheets if plain(each.stock) != plain(stock))
    if kept == saved.used_sheets:
        known = [each.stock for each in saved.used_sheets]
        raise UnknownPrinterError(stock, what="part-used sheet of", known=known)
    return replace(saved, used_sheets=kept)


def _edges(typed: str) -> Insets:
    try:
        return checked_edges([float(edge_mm) for edge_mm in typed.split(",")])
    except ValueError as error:
        raise CalibrationError([f"--edges {typed[:40]}: {error}"]) from error


def _in_words(printer: Printer, found: Calibration | None, path: Path) -> str:
    lines = []
    if found:
        lines = ["Left over once corrected, cross by cross:", "cross   across    down  (mm)"]
        lines += [
            f"{each.cross.name:<5}  {each.across_mm:+7.2f} {each.down_mm:+7.2f}"
            for each in found.residuals
        ]
        lines.append(f"This printer is off: {describe(found.printer)}.")
    return "\n".join([*lines, _printer_words(printer), f"Saved in {path}."])


def _as_json(printer: Printer, found: Calibration | None) -> str:
    data: dict[str, object] = {"printer": saved_as_data(Saved((printer,)))["printers"]}
    if found:
        data["residuals"] = [
            {"cross": each.cross.name, "across_mm": each.across_mm, "down_mm": each.down_mm}
            for each in found.residuals
        ]
        data["is_off"] = describe(found.printer)
    return json.dumps(data, ensure_ascii=False, indent=2)


def _printer_words(printer: Printer) -> str:
    lines = [printer.name]
    if edges := printer.edges:
        lines.append(
            f"  cannot print: {edges.top_mm:g} mm above, {edges.right_mm:g} right,"
            f" {edges.bottom_mm:g} below, {edges.left_mm:g} left{_when(printer.edges_measured_on)}"
        )
    lines += [
        f"  {place_of(each)}: {describe(each.correction.inverse())}; worst cross"
        f" {each.residual_mm:.2f} mm{_when(each.measured_on)}"
        for each in printer.corrections
    ]
    return "\n".join(lines)


def _when(day: date | None) -> str:
    return f"; measured {day}" if day else ""
