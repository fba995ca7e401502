"""The tables of the benchmark in Markdown."""

from __future__ import annotations

import os
import platform
from collections.abc import Iterator, Mapping, Sequence
from importlib.metadata import PackageNotFoundError, version

from tests.benchmarks.results import Result
from tests.benchmarks.targets import Target, targets

_HEAD = ("", "ms each", "against ours", "processor s", "peak MiB", "file MB", "read back")
_PACKAGES = ("weasyprint", "typst", "reportlab", "pypdfium2")
_ENGINES = ("weasyprint", "lean", "chromium", "typst", "reportlab", "libreoffice")

Results = Mapping[str, Result]


def tables(results: Results, *, rounds: int) -> str:
    """Give everything that is written down, in Markdown."""
    parts = [_machine(rounds), *_sections(results), _target_table(targets(results))]
    return "\n\n".join(filter(None, parts))


def _machine(rounds: int) -> str:
    known = ", ".join(f"{name} {_version(name)}" for name in _PACKAGES)
    return (
        f"{os.cpu_count()} cores, {platform.system()}, Python {platform.python_version()}; {known};"
        f" {rounds} interleaved rounds of whole processes, medians."
    )


def _version(package: str) -> str:
    try:
        return version(package)
    except PackageNotFoundError:
        return "not installed"


def _sections(results: Results) -> Iterator[str]:
    for kind, title in (("cards", "200 rich cards"), ("labels", "2,100 labels")):
        kept = (f"{kind} ours", f"{kind} ours proved", f"{kind} reprint", f"{kind} reprint proved")
        extra = ("cards one changed", "cards many", "many typst") if kind == "cards" else ()
        keys = (*kept, *extra, *(f"{kind} {engine}" for engine in _ENGINES))
        yield _section(f"{title}, without tags", keys, f"{kind} ours", results)
        keys = tuple(f"{kind} tagged {engine}" for engine in ("ours", *_ENGINES))
        yield _section(f"{title}, with tags", keys, f"{kind} tagged ours", results)
    keys = tuple(f"warm {engine}" for engine in ("ours", *_ENGINES))
    yield _section("One card after another in a process kept warm", keys, "warm ours", results)
    yield _parts(results)


def _section(title: str, keys: Sequence[str], own: str, results: Results) -> str:
    shown = [results[key] for key in keys if key in results]
    if not shown:
        return ""
    lines = [f"**{title}**", "", _row(_HEAD), _row(["---"] + ["---:"] * 5 + ["---"])]
    lines += [_line(result, results.get(own)) for result in shown]
    return "\n".join(lines)


def _line(result: Result, own: Result | None) -> str:
    if result.note:
        return _row([result.row.words, result.note, *[""] * 5])
    ratio = result.each_ms / own.each_ms if own and own.each_ms else 0.0
    return _row(
        [
            result.row.words,
            _figure(result.each_ms),
            f"{_figure(ratio)}x" if ratio else "",
            _figure(result.cpu_seconds),
            f"{result.peak_mib:.0f}",
            f"{result.file_bytes / 1e6:.2f}",
            result.checked.words if result.checked else "",
        ]
    )


def _parts(results: Results) -> str:
    lines = ["**Parts alone**", "", _row(("", "ms each")), _row(("---", "---:"))]
    words = {
        "copying": "the pictures of a card, read and written",
        "cards encoding": "the symbol of a card, encoded by segno (in no row above)",
        "labels encoding": "the symbol of a label, encoded by segno (in no row above)",
    }
    for key, said in words.items():
        if key in results:
            lines.append(_row((said, results[key].note or _figure(results[key].each_ms))))
    shrunk = results.get("thumbnails")
    if shrunk and shrunk.said:
        ways = {
            "full_seconds": "a photo of 12 megapixels decoded whole, then shrunk (Lanczos)",
            "draft_seconds": "the same, decoded small as the service does",
            "ladder_seconds": "all that is done to a photo when it arrives",
        }
        lines += [_row((told, _figure(1000 * shrunk.said[key]))) for key, told in ways.items()]
    return "\n".join(lines)


def _target_table(wanted: Sequence[Target]) -> str:
    lines = ["**What is held**", "", _row(("", "wanted", "measured", "held"))]
    lines.append(_row(("---", "---", "---", "---")))
    for target in wanted:
        held = "" if target.measured is None else "yes" if target.is_held else "NO"
        measured = "not measured" if target.measured is None else _figure(target.measured)
        sign = "at most" if target.is_ceiling else "at least"
        limit = f"{sign} {_figure(target.limit)} {target.unit}".strip()
        lines.append(_row((target.words, limit, f"{measured} {target.unit}".strip(), held)))
    return "\n".join(lines)


def _row(cells: Sequence[str]) -> str:
    return f"| {' | '.join(cells)} |"


def _figure(value: float) -> str:
    """Give three significant digits."""
    if value >= 100 or value == 0:
        return f"{value:.0f}"
    return f"{value:.1f}" if value >= 10 else f"{value:.2f}" if value >= 1 else f"{value:.3f}"
