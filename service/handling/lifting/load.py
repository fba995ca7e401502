"""Whether a container is fuller than its own limit allows."""

from __future__ import annotations

from collections.abc import Iterator

from service.contents.packing import Packing
from service.contents.weights import Certainty, weigh_packing
from service.findings import Finding, Where, make_finding
from service.handling.lifting.written import compare_kg
from service.printed import to_print
from service.sentence import Sentence
from service.units import kg_from_grams

_KNOWN_AS = {
    Certainty.MEASURED: "weighed",
    Certainty.SUM: to_print("sum of the records"),
    Certainty.ESTIMATED: "estimated",
    Certainty.AT_LEAST: "at least",
}


def check_load(packing: Packing) -> Iterator[Finding]:
    """Note a container, or one that lies in it, that weighs more than it may when full.

    What is only partly weighed can be too heavy already; what is not known at all is not judged.
    """
    container, weight = packing.container, weigh_packing(packing)
    limit_g = container.weight_limit_g
    if limit_g is not None and weight.weight_g > limit_g:
        where = Where(container_number=container.container_number)
        compared = compare_kg(weight.weight_g, kg_from_grams(limit_g))
        message = Sentence(
            "{compared}, the limit of this container ({known_as})."
            " Keeping to such a limit is common practice, no source.",
            compared=compared,
            known_as=Sentence(_KNOWN_AS[weight.certainty]),
        )
        yield make_finding("over-weight-limit", where, message)
    for inner in packing.nested:
        yield from check_load(inner)
