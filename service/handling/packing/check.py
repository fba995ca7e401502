"""All checks of a packing, by code; a museum may turn single ones off."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from service.contents.packing import Packing
from service.findings import Finding
from service.handling.packing.conflicts import check_conflicts
from service.handling.packing.housing import (
    check_lid,
    check_materials,
    check_stacking,
    check_temporary,
    check_weight,
)
from service.handling.packing.order import check_order
from service.handling.packing.report import Known
from service.handling.packing.size import check_size
from service.handling.packing.textiles import check_folds, check_hung, check_metal, check_pins

_Check = Callable[[Packing, Known], Iterable[Finding]]

_CHECKS: tuple[_Check, ...] = (
    check_order,
    check_conflicts,
    check_pins,
    check_metal,
    check_folds,
    check_hung,
    check_materials,
    check_temporary,
    check_size,
    check_lid,
    check_stacking,
    check_weight,
)

NOTHING_KNOWN = Known()


def check_packing(
    packing: Packing, known: Known = NOTHING_KNOWN, *, off: Iterable[str] = ()
) -> tuple[Finding, ...]:
    """Give what is wrong with a packing as far as the records say, without the codes in `off`.

    A container that lies in this one is checked by itself; only what its contents do to the others
    is said here.
    """
    left_out = frozenset(off)
    found = (finding for check in _CHECKS for finding in check(packing, known))
    return tuple(finding for finding in found if finding.code not in left_out)
