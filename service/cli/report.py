"""How the command line says what happened: findings, results, errors and exit codes."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Sequence
from dataclasses import asdict

from rich.console import Console
from rich.markup import escape

from service.errors import (
    BackupError,
    CardStateError,
    ConfigError,
    ContentsError,
    CursorError,
    DayAheadError,
    FileNotStoredError,
    JobError,
    LayoutError,
    NotFoundError,
    NotSentError,
    PackedElsewhereError,
    PackingConflictError,
    PeopleError,
    RecordsError,
    RenderError,
    ServiceError,
    SheetError,
    StoreBusyError,
    StoreError,
    StoreFullError,
    StoreTooNewError,
    SymbolError,
    UnstorableTextError,
    WrongContainerError,
)
from service.findings import Finding, Severity
from service.handling.every_rule import RULE_GROUPS

EXIT_FINDINGS = 1
EXIT_FILES = 2
EXIT_CODES: dict[type[ServiceError], int] = {
    RecordsError: 2,
    ContentsError: 2,
    SymbolError: 2,
    LayoutError: 2,
    SheetError: 2,
    RenderError: 5,
    StoreError: 5,
    NotFoundError: 3,
    PackingConflictError: 3,
    PackedElsewhereError: 3,
    CardStateError: 3,
    WrongContainerError: 3,
    FileNotStoredError: 3,
    UnstorableTextError: 2,
    CursorError: 2,
    DayAheadError: 2,
    BackupError: 2,
    PeopleError: 2,
    StoreBusyError: 4,
    StoreFullError: 4,
    StoreTooNewError: 78,
    NotSentError: 4,
    JobError: 5,
    ConfigError: 78,
    ServiceError: 5,
}
"""The exit code of each branch of the tree; the nearest base class decides."""

_COLOURS = {Severity.ERROR: "red", Severity.WARNING: "yellow", Severity.NOTE: "cyan"}


def exit_code_of(error: ServiceError) -> int:
    """Give the exit code of an error, from its nearest base class in the table."""
    return next(EXIT_CODES[base] for base in type(error).__mro__ if base in EXIT_CODES)


def finding_as_data(finding: Finding) -> dict[str, str]:
    """Give a finding as plain data for `--json` and for programs."""
    return {
        "code": finding.code,
        "severity": finding.severity.value,
        "where": str(finding.where),
        "message": finding.message,
        "advice": finding.advice,
    }


def write_finding(finding: Finding) -> str:
    """Write a finding in a line for people."""
    return f"{finding.severity.value} {finding.where}: {finding.message} {finding.advice}"


def findings_as_json(findings: Sequence[Finding]) -> str:
    """Write findings as one JSON document."""
    data = {"findings": [finding_as_data(finding) for finding in findings]}
    return json.dumps(data, ensure_ascii=False, indent=2)


def rules_as_json() -> str:
    """Write every rule as one JSON document, group by group."""
    groups = [
        {"heading": group.heading, "rules": [asdict(rule) for rule in group.rules]}
        for group in RULE_GROUPS
    ]
    return json.dumps({"groups": groups}, ensure_ascii=False, indent=2)


def show_findings(console: Console, findings: Sequence[Finding], *, most: int = 40) -> None:
    """List findings, the gravest first, each with its place and what to do."""
    order = list(Severity)
    ranked = sorted(findings, key=lambda finding: order.index(finding.severity))
    for finding in ranked[:most]:
        colour = _COLOURS[finding.severity]
        place = escape(str(finding.where))
        console.print(
            f"[{colour}]{finding.severity.value}[/] [bold]{place}[/]: {escape(finding.message)}"
            f" [dim]{escape(finding.advice)} ({finding.code})[/]"
        )
    if len(ranked) > most:
        console.print(f"... and {len(ranked) - most} more; `check --json` lists all of them.")


def count_findings(findings: Sequence[Finding]) -> str:
    """Say in words how many findings there are of each severity."""
    counted = Counter(finding.severity for finding in findings)
    words = [
        f"{counted[severity]} {severity.value}{'s' if counted[severity] > 1 else ''}"
        for severity in Severity
        if counted[severity]
    ]
    return ", ".join(words) or "nothing to report"


def show_file_error(console: Console, error: OSError) -> int:
    """Say which file or folder could not be used, and why, and give the exit code."""
    reason = error.strerror or str(error)
    console.print(f"[red]{escape(str(error.filename))}: {escape(reason)}.[/]")
    console.print("Name another file or folder, or let this account use it.")
    return EXIT_FILES


def show_error(console: Console, error: ServiceError) -> int:
    """Print an error with its advice and give the exit code."""
    console.print(f"[red]{escape(str(error))}[/]\n{escape(error.advice)} [dim]({error.code})[/]")
    return exit_code_of(error)
