"""Which materials harm which others in one container, each pair with what backs it."""

from __future__ import annotations

from dataclasses import dataclass

from service.handling.materials import METALS
from service.handling.rule import Evidence, Rule

_P, _C, _M = Evidence.PUBLISHED, Evidence.PRACTICE, Evidence.MEMORY
_MGS = "Museums Galleries Scotland, guidance on materials that harm metals"


@dataclass(frozen=True, slots=True)
class Conflict:
    """Groups of materials that harm others near them; no `harmed` means anything else.

    Vapours fill a container; `needs_contact` asks that both lie in one compartment.
    """

    rule: Rule
    harming: tuple[str, ...]
    harmed: tuple[str, ...] = ()
    needs_contact: bool = False


CONFLICTS: tuple[Conflict, ...] = (
    Conflict(
        Rule(
            "tarnish-near-sulphur",
            "Silver, copper alloys and metal thread tarnish near wool and rubber.",
            _P,
            _MGS,
        ),
        ("wool", "rubber"),
        ("silver", "copper alloy", "metal thread"),
    ),
    Conflict(
        Rule("lead-near-oak", "Lead corrodes in the acid vapour of oak.", _P, _MGS),
        ("oak",),
        ("lead",),
    ),
    Conflict(
        Rule(
            "lead-near-acid-board",
            "Lead, pewter and shell corrode near acid board and acid woods.",
            _M,
        ),
        ("acid board", "acid wood"),
        ("lead", "pewter", "shell"),
    ),
    Conflict(
        Rule("pewter-near-oak", "Pewter and shell corrode in the acid vapour of oak.", _M),
        ("oak",),
        ("pewter", "shell"),
    ),
    Conflict(
        Rule(
            "nitrate-apart",
            "Cellulose nitrate film burns fiercely and gives off acid: it is kept apart.",
            _P,
            "Hazards in Collections e-tool, nitrate film",
        ),
        ("nitrate film",),
    ),
    Conflict(
        Rule(
            "acetate-apart",
            "The vinegar vapour of acetate film spreads decay: it has a ventilated box of its own.",
            _P,
            "NPS Museum Handbook, appendix M",
        ),
        ("acetate film",),
    ),
    Conflict(
        Rule("celluloid-near-metal", "Celluloid gives off acid vapour: no metal beside it.", _C),
        ("celluloid",),
        METALS,
    ),
    Conflict(
        Rule("mothballs-near-plastic", "Mothball vapour softens plastics.", _M),
        ("mothballs",),
        ("old plastic",),
    ),
    Conflict(
        Rule("weighted-silk-alone", "Weighted or iron-tannate dyed silk lies alone.", _M),
        ("weighted silk",),
    ),
    Conflict(
        Rule("rubber-alone", "Ageing rubber stains and sticks to what it touches.", _M),
        ("rubber",),
        needs_contact=True,
    ),
    Conflict(
        Rule("pvc-alone", "PVC gives off acid and sticks to what it touches.", _M),
        ("pvc",),
        needs_contact=True,
    ),
    Conflict(
        Rule("copper-on-leather", "Copper alloys and the fat of leather corrode each other.", _M),
        ("leather",),
        ("copper alloy",),
        needs_contact=True,
    ),
    Conflict(
        Rule(
            "buffered-near-protein",
            "Tissue for garments is unbuffered unless the fibre is known to be plant.",
            _P,
            "CCI Notes 13/5",
        ),
        ("buffered tissue",),
        ("protein fibre",),
    ),
)

RULES: tuple[Rule, ...] = tuple(conflict.rule for conflict in CONFLICTS)
