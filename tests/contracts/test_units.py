"""Every length and weight says its unit, and converts in one place."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.contracts.sources import SERVICE, name_of, python_files, tree_of

HOME = SERVICE / "units.py"
# mm and cm to the inch, points to the mm and back, pounds and ounces in grams.
FACTORS = (25.4, 2.54, 72 / 25.4, 25.4 / 72, 453.59237, 28.349523125)
UNITS = (
    "_arcmin",
    "_bytes",
    "_deg",
    "_dpi",
    "_g",
    "_kg",
    "_mm",
    "_modules",
    "_per_min",
    "_pt",
    "_px",
    "_ratio",
    "_seconds",
)
# Fields whose unit stands elsewhere, each with the reason.
UNIT_ELSEWHERE = {
    "Correction.xx": "a plain ratio of an affine map",
    "Correction.xy": "a plain ratio of an affine map",
    "Correction.yx": "a plain ratio of an affine map",
    "Correction.yy": "a plain ratio of an affine map",
    "Backdrop.noise_levels": "levels of grey, 0 to 255",
    "Raster.dots_per_mm_x": "its axis follows the unit",
    "Raster.dots_per_mm_y": "its axis follows the unit",
    "Quantity.value": "its unit is the field beside it",
}
ELSEWHERE = [path for path in python_files(SERVICE) if path != HOME]


def _conversions(tree: ast.Module) -> Iterator[int]:
    """Give the lines that name or apply a factor, scale by 72, or scale grams by 1000.

    A measure that happens to equal a factor, in a table or a call, is no conversion.
    """
    measures = {id(element) for node in ast.walk(tree) for element in _elements(node)}
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and _is_factor(node.value) and id(node) not in measures:
            yield node.lineno
        if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Mult | ast.Div):
            sides = (node.left, node.right)
            if any(_is(side, 72) for side in sides):
                yield node.lineno
            if any(_is(side, 1000) for side in sides) and any(map(_is_mass, sides)):
                yield node.lineno


def _elements(node: ast.AST) -> list[ast.expr]:
    if isinstance(node, ast.Tuple | ast.List):
        return node.elts
    return node.args if isinstance(node, ast.Call) else []


def _is_factor(value: object) -> bool:
    return isinstance(value, float) and any(abs(value / f - 1) < 1e-4 for f in FACTORS)


def _is(node: ast.expr, number: float) -> bool:
    return isinstance(node, ast.Constant) and node.value == number


def _is_mass(node: ast.expr) -> bool:
    return ast.unparse(node).endswith(("_g", "_kg"))


def _float_fields(tree: ast.Module) -> Iterator[str]:
    for node in ast.walk(tree):
        if isinstance(node, ast.ClassDef) and "dataclass" in map(_decorator, node.decorator_list):
            for field in node.body:
                if isinstance(field, ast.AnnAssign) and "float" in ast.unparse(field.annotation):
                    yield f"{node.name}.{ast.unparse(field.target)}"


def _decorator(node: ast.expr) -> str:
    return ast.unparse(node.func if isinstance(node, ast.Call) else node)


@pytest.mark.parametrize("path", ELSEWHERE, ids=name_of)
def test_conversions_stand_in_one_file(path: Path) -> None:
    """No file but units.py knows how an inch, a point or a pound converts."""
    assert list(_conversions(tree_of(path))) == []


@pytest.mark.parametrize("path", ELSEWHERE, ids=name_of)
def test_measures_name_their_unit(path: Path) -> None:
    """Every number with a fraction in a record of ours carries its unit in its name."""
    fields = _float_fields(tree_of(path)) if name_of(path) != "service/geometry.py" else ()
    assert [
        name for name in fields if not name.endswith(UNITS) and name not in UNIT_ELSEWHERE
    ] == []
