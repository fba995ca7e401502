"""The one command that checks everything, cheapest first, and stops at the first failure."""

from __future__ import annotations

import subprocess
import sys
import time
from collections.abc import Sequence
from dataclasses import dataclass

from service.bootstrap.environment import ROOT

OVERALL_PERCENT = 95
PURE_PERCENT = 99
"""All but what only some seeds of the property tests reach."""
PURE_PACKAGES = (
    "cards",
    "contents",
    "errors.py",
    "findings.py",
    "geometry.py",
    "handling",
    "legibility.py",
    "pages",
    "printed.py",
    "records",
    "sentence.py",
    "sheets",
    "symbols",
    "units.py",
)


_WORKERS = ("-n", "3", "--dist", "worksteal")
"""Three, for a test often waits for a browser or a child; whoever is done takes from the others."""


@dataclass(frozen=True, slots=True)
class Step:
    """One check: its name, and what the environment's Python is called with."""

    name: str
    arguments: tuple[str, ...]


_LINT_IMPORTS = "from importlinter.cli import lint_imports_command as lint; lint()"

STATIC_STEPS = (
    Step("format", ("-m", "ruff", "format", "--check", "--quiet")),
    Step("lint", ("-m", "ruff", "check", "--quiet")),
    Step("import contracts", ("-c", _LINT_IMPORTS, "--no-logo")),
    Step("declared dependencies", ("-m", "deptry", ".")),
    Step("types", ("-m", "mypy")),
    Step("templates", ("-m", "djlint", "--lint", "--quiet", "templates")),
)


def coverage_steps() -> tuple[Step, ...]:
    """Give the two reports: over everything, and over the pure packages alone."""
    pure = ",".join(
        f"service/{name}" if name.endswith(".py") else f"service/{name}/*" for name in PURE_PACKAGES
    )
    report = ("-m", "coverage", "report")
    return (
        Step("coverage, collected", ("-m", "coverage", "combine", "--quiet")),
        Step(
            f"coverage, {OVERALL_PERCENT} % of everything",
            (*report, f"--fail-under={OVERALL_PERCENT}"),
        ),
        Step(
            f"coverage, {PURE_PERCENT} % of the pure packages",
            (*report, f"--include={pure}", f"--fail-under={PURE_PERCENT}"),
        ),
    )


def run_all(arguments: Sequence[str]) -> int:
    """Run every check and give the first exit code that is not 0.

    `arguments` go to pytest. With any but `--long` only a part of the tests may run, so coverage
    is not judged. The last line printed is the one pytest closed with.
    """
    for step in STATIC_STEPS:
        if code := _run(step):
            return code
    code, closing_line = _run_tests(arguments)
    if code:
        return code
    if set(arguments) <= {"--long"}:
        for step in coverage_steps():
            if code := _run(step):
                return code
    print(closing_line, flush=True)
    return 0


def _run(step: Step) -> int:
    print(f"== {step.name}", flush=True)
    began = time.monotonic()
    code = subprocess.call([sys.executable, *step.arguments], cwd=ROOT)
    print(f"   {time.monotonic() - began:.1f} s", flush=True)
    return code


def _run_tests(arguments: Sequence[str]) -> tuple[int, str]:
    """Run pytest under coverage, showing its lines as they come; give its code and last line."""
    print("== tests", flush=True)
    command = [sys.executable, "-m", "coverage", "run", "-m", "pytest", *_WORKERS, *arguments]
    closing_line = ""
    with subprocess.Popen(
        command, cwd=ROOT, stdout=subprocess.PIPE, encoding="utf-8", errors="replace"
    ) as tests:
        for line in tests.stdout or ():
            print(line, end="", flush=True)
            closing_line = line.rstrip() or closing_line
    return tests.returncode, closing_line
