"""What README and DEVELOPERS say against what the service is: nothing stale, nothing forgotten."""

from __future__ import annotations

import json
import re
import shlex
import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest
import typer

from service.cards.kinds import CARD_KINDS
from service.cli.main import app, run
from service.cli.report import EXIT_CODES
from service.config import PREFIX, Settings
from service.errors import ConfigError
from service.findings import CODES
from service.handling.every_rule import list_rules, name_evidence
from service.handling.hazards import HAZARDS
from service.records.cells.dates import parse_date
from service.records.cells.dimensions import parse_dimensions
from service.records.cells.weights import parse_weight
from service.records.codes import CAUTION_CODES, HANG_FACTOR_CODES, HAZARD_CODES
from service.records.mapping.document import read_mapping_file
from service.records.museum.region import Region
from service.records.sources.columns import (
    CONTAINER_COLUMNS,
    MUSEUM_COLUMNS,
    OBJECT_COLUMNS,
    PACKING_COLUMNS,
    Columns,
)
from service.sheets.own_stock import NEEDED, OPTIONAL, parse_stock
from service.web.forms import PrintForm
from service.web.routes import router
from service.web.store.routes import PARTS
from tests.contracts.sources import ROOT, TESTS, name_of, text_of

README = text_of(ROOT / "README.md")
DEVELOPERS = text_of(ROOT / "DEVELOPERS.md")
COMMANDS = typer.main.get_command(app)
TABLES = {
    "objects.csv": OBJECT_COLUMNS,
    "containers.csv": CONTAINER_COLUMNS,
    "packings.csv": PACKING_COLUMNS,
    "museum.toml": MUSEUM_COLUMNS,
}
# Answered by the set-up, before there are commands.
OF_THE_SET_UP: tuple[list[str], ...] = ([], ["test"])
CHEAP = (["kinds"], ["stocks"])


def section(heading: str) -> str:
    """Give what stands under a heading of README, up to the next one of its depth or above."""
    depth = len(heading) - len(heading.lstrip("#"))
    _, _, rest = f"\n{README}".partition(f"\n{heading}\n")
    assert rest, f"README has no heading {heading!r}"
    return re.split(rf"\n#{{1,{depth}}} ", rest)[0]


def table(heading: str) -> list[list[str]]:
    """Give the rows of the table under a heading, without its own heading and rule."""
    lines = [line for line in section(heading).splitlines() if line.startswith("|")]
    return [[cell.strip() for cell in line.strip("|").split("|")] for line in lines[2:]]


def shell_lines() -> list[str]:
    """Give every line of README that is to be typed."""
    blocks = re.findall(r"```sh\n(.*?)```", README, re.DOTALL)
    return [line for block in blocks for line in block.splitlines()]


def service_calls() -> list[list[str]]:
    """Give the arguments of every call of the service in README, each once."""
    calls = [shlex.split(line)[3:] for line in shell_lines() if line.startswith("python3 -m")]
    return [call for at, call in enumerate(calls) if call not in calls[:at]]


def test_readme_opens_with_the_job() -> None:
    """The first paragraph says what is printed and for whom."""
    first = README.split("\n\n")[1]
    assert all(word in first for word in ("prints", "boxes", "PDF", "volunteers"))


@pytest.mark.parametrize("call", service_calls(), ids=" ".join)
def test_commands_are_understood(call: list[str]) -> None:
    """Every command in README exists with the options and choices it is shown with."""
    if call not in OF_THE_SET_UP:
        with COMMANDS.make_context("service", call) as context:
            name, command, rest = COMMANDS.resolve_command(context, call)  # type: ignore[attr-defined]
            assert command is not None
            command.make_context(name, rest)


@pytest.mark.parametrize("call", CHEAP, ids=" ".join)
def test_cheap_commands_run(call: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    """The commands that only list things are in README and answer."""
    assert call in service_calls()
    assert run(call) == 0
    assert capsys.readouterr().out


def test_every_command_is_shown() -> None:
    """No command is left for the reader to find."""
    shown = {call[0] for call in service_calls() if call}
    assert set(COMMANDS.commands) <= shown  # type: ignore[attr-defined]


def test_every_option_is_named() -> None:
    """Every option of printing is explained or shown."""
    options = {
        option
        for parameter in COMMANDS.commands["print"].params  # type: ignore[attr-defined]
        for option in parameter.opts
        if option.startswith("--") and option not in {"--output", "--help"}
    }
    assert {option for option in options if option not in README} == set()


def test_request_example_can_be_sent() -> None:
    """The curl line names fields, files and a path that exist."""
    (line,) = (line for line in shell_lines() if line.startswith("curl"))
    fields = dict(re.findall(r"-F (\w+)=(\S+)", line))
    assert set(fields) <= set(PrintForm.model_fields)
    samples = ROOT / "sample_records"
    assert all((samples / at[1:]).is_file() for at in fields.values() if at.startswith("@"))
    assert set(PrintForm.model_fields) <= set(re.findall(r"\w+", section(SERVING)))


SERVING = "## Over the network of your own machine"


def test_every_path_is_listed() -> None:
    """The tables of paths have each path of the API; what numbers may hold is left out."""
    paths = {str(getattr(route, "path", "")) for route in router.routes}
    paths |= {route.path for part in PARTS for route in part.router.routes}
    plain = {re.sub(r":\w+}", "}", path) for path in paths}
    assert {path for path in plain if path not in section(SERVING)} == set()


def test_settings_are_the_table() -> None:
    """Each setting has its row with name, default and help, and there are no others."""
    rows = {cells[0].strip("`"): cells[1:] for cells in table("## Settings")}
    fields = Settings.model_fields
    assert list(rows) == [PREFIX + name.upper() for name in fields]
    for name, field in fields.items():
        default, said = rows[PREFIX + name.upper()]
        assert said == field.description
        assert field.default_factory is not None or default.strip("`") == str(field.default)


def test_findings_are_the_table() -> None:
    """Each finding stands in README with its severity and advice, in the order of the code."""
    expected = [[f"`{code}`", entry.severity.value, entry.advice] for code, entry in CODES.items()]
    assert table("## Findings") == expected


def test_exit_codes_are_listed() -> None:
    """Every exit code an error can give is explained."""
    listed = {int(cells[0]) for cells in table("## Exit codes")}
    assert listed == {0, 1} | set(EXIT_CODES.values())
    assert EXIT_CODES[ConfigError] in listed


def test_kinds_are_the_table() -> None:
    """README's first table has each kind of card."""
    assert [cells[0].strip("`") for cells in table("## A first look")] == [
        kind.code for kind in CARD_KINDS
    ]


@pytest.mark.parametrize("name", TABLES)
def test_columns_are_the_table(name: str) -> None:
    """Each column of a table has its row, in the order in which it is read, and no other has."""
    columns: Columns = TABLES[name]
    assert [cells[0].strip("`") for cells in table(f"### {name}")] == list(columns.names)


def test_hazards_are_the_table() -> None:
    """Each hazard code stands with the first precautions that its card prints."""
    rows = {cells[0].strip("`"): cells for cells in table("## Hazards and cautions")}
    assert sorted(rows) == sorted(HAZARD_CODES)
    for code, cells in rows.items():
        entry = HAZARDS[code]
        assert entry.instruction in cells[2]
        assert entry.discreet or cells[1] == entry.name
        assert cells[3] == entry.protection


def test_rules_are_the_table() -> None:
    """Every rule stands with its sentence and what backs it, in the order of the program."""
    told = [tuple(cells) for cells in table("## The rules")]
    assert told == [(f"`{rule.code}`", rule.says, name_evidence(rule)) for rule in list_rules()]


def test_consultants_are_the_table() -> None:
    """Each hazard code stands with the people to consult, by region."""
    said = {
        code: tuple(
            elsewhere if words == "as elsewhere" else words for words in (uk, us, elsewhere)
        )
        for codes, elsewhere, uk, us in table("## Whom to consult")
        for code in re.findall(r"`([a-z-]+)`", codes)
    }
    assert said == {
        code: tuple(
            entry.consult.in_region(region) for region in (Region.UK, Region.US, Region.ELSEWHERE)
        )
        for code, entry in HAZARDS.items()
    }


def test_cautions_and_hang_factors_are_listed() -> None:
    """Each code a record may use for cautions or hanging is named."""
    listed = set(re.findall(r"`([a-z-]+)`", section("## Hazards and cautions")))
    assert set(CAUTION_CODES) | set(HANG_FACTOR_CODES) <= listed


READERS: dict[str, Callable[[str], object]] = {
    "weight": parse_weight,
    "date": parse_date,
    "dimensions": lambda text: parse_dimensions(text).measures or None,
}


@pytest.mark.parametrize("row", table("### Measures, weights and dates as people write them"))
def test_examples_are_understood_as_said(row: list[str]) -> None:
    """What README says is understood is understood, and what it says is refused is refused."""
    wrote, understood = row
    read = READERS[wrote.split()[0]]
    values = [read(text) for text in re.findall(r"`([^`]+)`", wrote)]
    assert values
    assert all((value is None) == understood.startswith("not understood") for value in values)


def test_own_mapping_is_usable() -> None:
    """The mapping shown for headings of one's own can be saved."""
    _, block = re.findall(r"```toml\n(.*?)```", README, re.DOTALL)
    mapping, wrong = read_mapping_file(block.encode(), name="ours.toml")
    assert wrong == ()
    assert mapping.encoding == "windows-1252"


def test_own_sheet_is_possible() -> None:
    """The measures shown for one's own sheet make a stock."""
    block, _ = re.findall(r"```toml\n(.*?)```", README, re.DOTALL)
    measures = tomllib.loads(block)
    assert parse_stock({"name": "sheet", **measures}).positions == 8
    assert set(measures) <= set(NEEDED) | set(OPTIONAL)


def test_samples_named_exist() -> None:
    """Every file of ours that README or DEVELOPERS names is there."""
    paths = re.findall(
        r"`((?:service|tests|templates|sample_records|\.ci)/[\w./-]+)`", README + DEVELOPERS
    )
    assert [path for path in paths if not (ROOT / path).exists()] == []


def test_one_box_has_the_four_keys() -> None:
    """The JSON sample has the keys that README names."""
    document = json.loads((ROOT / "sample_records" / "one_box.json").read_text(encoding="utf-8"))
    assert list(document) == ["museum", "objects", "containers", "packings"]


def test_outside_figures_are_listed() -> None:
    """DEVELOPERS names every check against a published source."""
    checks = sorted((TESTS / "outside").glob("test_*.py"))
    assert [name_of(path) for path in checks if f"`{path.name}`" not in DEVELOPERS] == []


def test_links_inside_lead_somewhere() -> None:
    """A link to a heading or a file has its target."""
    headings = re.findall(r"^#+ (.+)$", README, re.MULTILINE)
    anchors = {re.sub(r"[^\w\- ]", "", text).lower().replace(" ", "-") for text in headings}
    targets = re.findall(r"\]\((#?[^)]+)\)", README)
    assert [
        target
        for target in targets
        if target.removeprefix("#") not in anchors and not Path(ROOT / target).exists()
    ] == []
