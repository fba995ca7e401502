"""The commands. Without one, the demo collection is printed from a new store of its own."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import Annotated

import typer

from service.cards.kinds import CARD_KINDS, find_kind
from service.cli.at_desk import AtDesk, Json, find_demo, now, open_console, own_or_demo
from service.cli.calibrate import calibrate_app
from service.cli.demo import show_demo
from service.cli.marks import print_marks
from service.cli.own_stock import name_stock
from service.cli.people.share import ShareRequest, share_store
from service.cli.people.tokens import tokens_app
from service.cli.people.users import users_app
from service.cli.printing import (
    ALL,
    GoesOn,
    Kinds,
    PrinterName,
    PrintRequest,
    Tagged,
    TrayName,
    print_source,
)
from service.cli.report import (
    EXIT_FINDINGS,
    count_findings,
    findings_as_json,
    rules_as_json,
    show_error,
    show_file_error,
    show_findings,
)
from service.cli.serving import serve_api
from service.cli.store.commands import store_app
from service.config import load_settings
from service.errors import ServiceError
from service.findings import Severity, worst_severity
from service.handling.every_rule import RULE_GROUPS, name_evidence
from service.keeping.printing.printers_file import name_printer
from service.pipeline.options import PrintOptions, object_tag_keys
from service.pipeline.read import open_source, read_source
from service.pipeline.run import check_collection
from service.sheets.stocks import STOCKS
from service.wiring import open_workshop

app = typer.Typer(
    add_completion=False,
    no_args_is_help=False,
    pretty_exceptions_enable=False,
    help="Prints what goes on the outside of museum storage, and proves that it can be read.",
)


@app.callback(invoke_without_command=True)
def demo(context: typer.Context) -> None:
    """Show the demo when no command is given: its cards in out/, and its pages in a browser."""
    if context.invoked_subcommand is None:
        settings = load_settings(os.environ)
        code = show_demo(open_console(), settings)
        # Whoever sits before it goes on in the browser; a script wants its end.
        if sys.stdout.isatty():
            code = serve_api(open_console(), find_demo(settings))
        raise typer.Exit(code)


@app.command("print")
def print_(
    source: Annotated[Path, typer.Argument(help="A folder, CSV, XLSX or JSON file.")],
    output: Annotated[
        Path, typer.Option("-o", "--output", help="A folder, or NAME.pdf with one --kind.")
    ],
    kind: Kinds = None,
    stock: Annotated[
        str, typer.Option(help="A stock by name (see `stocks`), or a TOML file with its measures.")
    ] = "",
    paper: Annotated[str, typer.Option(help="A4 or Letter, where stocks are chosen.")] = "A4",
    start: Annotated[int, typer.Option(help="First free position of the first sheet.")] = 1,
    skip: Annotated[
        list[int] | None, typer.Option(help="A used or spoiled position of the first sheet.")
    ] = None,
    copies: Annotated[int, typer.Option(min=1, help="How often each card is printed.")] = 1,
    container: Annotated[
        list[str] | None, typer.Option(help="Print only this container; may be repeated.")
    ] = None,
    tagged: Tagged = None,
    printer: PrinterName = "",
    tray: TrayName = "",
    goes_on: GoesOn = False,
    as_json: Json = False,
) -> None:
    """Print the cards of a collection: one PDF for each kind and stock."""
    settings = load_settings(os.environ)
    options = PrintOptions(
        kinds=CARD_KINDS if ALL in (kind or ()) else tuple(map(find_kind, kind or ())),
        stock=name_stock(stock) if stock else None,
        paper="Letter" if paper.casefold() == "letter" else "A4",
        start_position=start,
        skipped=frozenset(skip or ()),
        copies=copies,
        containers=frozenset(container or ()),
        only=object_tag_keys(tagged or ()),
        printer=name_printer(settings.data, printer, tray),
        today=now().date(),
    )
    request = PrintRequest(source, output, options, as_json=as_json, goes_on=goes_on)
    raise typer.Exit(print_source(open_console(), settings, request))


@app.command()
def check(
    source: Annotated[Path, typer.Argument(help="A folder, CSV, XLSX or JSON file.")],
    as_json: Json = False,
) -> None:
    """Say what is noticed in records, packings and photos; exit code 1 where something is wrong."""
    settings = load_settings(os.environ)
    opened = open_source(source)
    with open_workshop(settings.data, processes=settings.processes) as workshop:
        collection = read_source(opened.files, workshop.workers)
        options = PrintOptions(today=now().date())
        findings = check_collection(collection, opened.photos, options, workshop)
    if as_json:
        typer.echo(findings_as_json(findings))
    else:
        show_findings(open_console(), findings)
        typer.echo(f"{source}: {count_findings(findings)}")
    grave = worst_severity(findings) is Severity.ERROR
    raise typer.Exit(EXIT_FINDINGS if grave else 0)


@app.command()
def stocks() -> None:
    """List the stocks: name, medium and positions."""
    for stock in STOCKS:
        typer.echo(f"{stock.name:<28} {stock.medium.value:<7} {stock.positions} positions")


@app.command()
def kinds() -> None:
    """List the kinds of card and where each goes."""
    for kind in CARD_KINDS:
        asked = "" if kind.standing else " (on request)"
        typer.echo(f"{kind.code:<14} {kind.name}: {kind.where}{asked}")


@app.command()
def marks(
    output: Annotated[Path, typer.Option("-o", "--output", help="The PDF to write.")],
    paper: Annotated[str, typer.Option(help="A4 or Letter.")] = "A4",
    as_json: Json = False,
) -> None:
    """Print every mark in three sizes with its words and meaning, to look at and to try out."""
    print_marks(load_settings(os.environ), output, paper=paper, as_json=as_json)


@app.command()
def rules(as_json: Json = False) -> None:
    """List the rules behind cautions, hazards, advice and findings, each with its source."""
    if as_json:
        typer.echo(rules_as_json())
        return
    for group in RULE_GROUPS:
        typer.echo(f"{group.heading}\n")
        for rule in group.rules:
            typer.echo(f"  {rule.says}\n    {name_evidence(rule)} ({rule.code})")
        typer.echo("")


@app.command()
def serve(
    host: Annotated[str, typer.Option(help="Address to listen on.")] = "",
    port: Annotated[int | None, typer.Option(min=0, max=65535, help="0 takes a free one.")] = None,
    is_demo: Annotated[bool, typer.Option("--demo", help="Show the store of the demo.")] = False,
) -> None:
    """Show the pages and answer over HTTP; without --host to this machine only."""
    settings = own_or_demo(load_settings(os.environ), is_demo=is_demo)
    chosen = {"host": host or settings.host, "port": settings.port if port is None else port}
    raise typer.Exit(serve_api(open_console(), settings.model_copy(update=chosen)))


@app.command()
def share(
    name: Annotated[str, typer.Option(help="Who becomes the first manager.")] = "",
    host: Annotated[str, typer.Option(help="Address to listen on, else every one.")] = "",
    port: Annotated[int | None, typer.Option(min=1, max=65535, help="Port to listen on.")] = None,
    prepare: Annotated[bool, typer.Option("--prepare", help="Only prepare; do not serve.")] = False,
    as_json: Json = False,
) -> None:
    """Answer others on the network over https; the first start adds the first manager."""
    settings = load_settings(os.environ)
    chosen = {"host": host or settings.host, "port": port or settings.port}
    request = ShareRequest(name, only_prepare=prepare, as_json=as_json)
    raise typer.Exit(share_store(open_console(), settings.model_copy(update=chosen), request))


@users_app.callback()
@tokens_app.callback()
def people(context: typer.Context) -> None:
    """Read the settings for the commands of people."""
    context.obj = AtDesk(load_settings(os.environ))


@calibrate_app.callback()
def calibrate(context: typer.Context) -> None:
    """Make up for a printer that prints askew."""
    context.obj = context.obj or load_settings(os.environ)


@store_app.callback()
def store(
    context: typer.Context,
    is_demo: Annotated[bool, typer.Option("--demo", help="Use the store of the demo.")] = False,
) -> None:
    """Keep records and printed cards: take in, find, pack, print, replace."""
    context.obj = AtDesk(own_or_demo(load_settings(os.environ), is_demo=is_demo))


app.add_typer(calibrate_app, name="calibrate")
app.add_typer(store_app, name="store")
app.add_typer(users_app, name="users", help=users_app.info.help)
app.add_typer(tokens_app, name="tokens", help=tokens_app.info.help)


def run(arguments: list[str]) -> int:
    """Run one command and give its exit code; our errors and those of files are told in words.

    Raises:
        OSError: When the system has trouble that is no file's.
    """
    try:
        app(args=arguments, prog_name="python3 -m service", standalone_mode=True)
    except ServiceError as error:
        return show_error(open_console(), error)
    except OSError as error:
        if error.filename is None:
            raise
        return show_file_error(open_console(), error)
    except SystemExit as leaving:
        return leaving.code if isinstance(leaving.code, int) else int(leaving.code is not None)
    return 0


if __name__ == "__main__":
    sys.exit(run(sys.argv[1:]))
