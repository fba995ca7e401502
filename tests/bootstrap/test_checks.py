"""The one command that checks everything."""

from __future__ import annotations

import tomllib

from service.bootstrap.checks import (
    OVERALL_PERCENT,
    PURE_PACKAGES,
    PURE_PERCENT,
    STATIC_STEPS,
    coverage_steps,
)
from service.bootstrap.environment import ROOT
from tests.bootstrap.conftest import Tree

# Stands for every tool: notes how it was called, and fails when it is the one told to.
TOOL = """
import os, sys
name = __name__ if __name__ != "__main__" else os.path.basename(sys.argv[0])[:-3]
with open("calls", "a") as calls:
    print(name, *sys.argv[1:], file=calls)
def lint():
    pass
lint_imports_command = lint
if "pytest" in sys.argv:
    print("1 passed in 0.1s")
if os.path.exists("fail") and open("fail").read() in sys.argv:
    sys.exit(3)
"""
# Only this process is measured, so that a stand-in can take the name of coverage after it.
RUN = """
import os, sys
from service.bootstrap.checks import run_all
for name in [name for name in os.environ if name.startswith("COVERAGE_")]:
    del os.environ[name]
sys.exit(run_all(sys.argv[1:]))
"""
TOOLS = ("ruff", "deptry", "mypy", "djlint", "coverage")


def _with_tools(tree: Tree) -> None:
    for name in TOOLS:
        (tree.folder / f"{name}.py").write_text(TOOL)
    (tree.folder / "importlinter").mkdir()
    (tree.folder / "importlinter" / "__init__.py").touch()
    (tree.folder / "importlinter" / "cli.py").write_text(TOOL)


def test_all_pass_and_the_tests_speak_last(tree: Tree) -> None:
    """Every tool runs, cheapest first; the last line is the one the tests closed with."""
    _with_tools(tree)
    done = tree.python("-c", RUN)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.splitlines()[-1] == "1 passed in 0.1s"
    calls = (tree.folder / "calls").read_text().splitlines()
    assert [call.split()[0] for call in calls] == [
        *("ruff", "ruff", "importlinter.cli", "deptry", "mypy", "djlint"),
        *("coverage", "coverage", "coverage", "coverage"),
    ]


def test_first_failure_stops_with_its_code(tree: Tree) -> None:
    """A check that fails ends the run with its own exit code, before dearer ones begin."""
    _with_tools(tree)
    (tree.folder / "fail").write_text("check")
    done = tree.python("-c", RUN)
    assert done.returncode == 3
    assert len((tree.folder / "calls").read_text().splitlines()) == 2


def test_failing_tests_give_their_code(tree: Tree) -> None:
    """When the tests fail, coverage is not reported and their code is given."""
    _with_tools(tree)
    (tree.folder / "fail").write_text("pytest")
    done = tree.python("-c", RUN)
    assert done.returncode == 3
    assert "== coverage" not in done.stdout


def test_coverage_below_its_mark_fails(tree: Tree) -> None:
    """A report below its percentage fails the whole run."""
    _with_tools(tree)
    (tree.folder / "fail").write_text("report")
    assert tree.python("-c", RUN).returncode == 3


def test_part_of_the_tests_is_not_judged_by_coverage(tree: Tree) -> None:
    """Arguments go to pytest as they are; a part of the tests owes no coverage."""
    _with_tools(tree)
    done = tree.python("-c", RUN, "tests/records", "-x")
    last = (tree.folder / "calls").read_text().splitlines()[-1]
    assert last.endswith("-n 3 --dist worksteal tests/records -x")
    assert "== coverage" not in done.stdout


def test_every_package_is_pure_or_named_otherwise() -> None:
    """The packages covered wholly are exactly those the import contracts keep pure."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    contract = project["tool"]["importlinter"]["contracts"][1]
    impure = {line.split(" ")[0].split(".")[1] for line in contract["ignore_imports"]}
    there = {
        path.stem
        for path in (ROOT / "service").iterdir()
        if path.stem not in {"__init__", "__pycache__"}
    }
    assert {name.removesuffix(".py") for name in PURE_PACKAGES} == there - impure


def test_reports_ask_for_more_of_the_pure() -> None:
    """Two reports: one over everything, a stricter one over the pure packages."""
    everything, pure = coverage_steps()[1:]
    assert f"--fail-under={OVERALL_PERCENT}" in everything.arguments
    assert f"--fail-under={PURE_PERCENT}" in pure.arguments
    assert "service/records/*" in pure.arguments[3]
    assert len({step.name for step in STATIC_STEPS}) == len(STATIC_STEPS)
