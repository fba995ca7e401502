"""The rules the product applies: a page for people, and its twin for programs."""

from __future__ import annotations

from fastapi import APIRouter, Response
from fastapi.responses import HTMLResponse
from pydantic import BaseModel

from service.handling.every_rule import RULE_GROUPS, name_evidence
from service.handling.rule import Evidence
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.views.templates import show_view

router = APIRouter(route_class=GatedRoute)

TWIN = "/api/rules"


class RuleView(BaseModel):
    """One rule: a code that lasts, a sentence, and what backs it."""

    code: str
    says: str
    evidence: Evidence
    source: str


class RuleGroupView(BaseModel):
    """Rules of one kind."""

    heading: str
    rules: list[RuleView]


class RulesView(BaseModel):
    """Every rule, in groups."""

    groups: list[RuleGroupView]


@router.get(TWIN, dependencies=[needs(Role.VIEW)])
def rules() -> RulesView:
    """List the rules behind cautions, hazards, advice and findings, each with its source."""
    return RulesView(
        groups=[
            RuleGroupView(
                heading=group.heading,
                rules=[
                    RuleView(
                        code=rule.code, says=rule.says, evidence=rule.evidence, source=rule.source
                    )
                    for rule in group.rules
                ],
            )
            for group in RULE_GROUPS
        ]
    )


@router.get("/rules", dependencies=[needs(Role.VIEW)], response_class=HTMLResponse)
def rules_page() -> Response:
    """Show the same as a page."""
    return show_view(
        "rules.html", {"groups": RULE_GROUPS, "name_evidence": name_evidence, "twin": TWIN}
    )
