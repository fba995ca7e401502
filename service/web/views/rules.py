"""The rules the product applies: a page for people, and its twin for programs."""

from __future__ import annotations

from fastapi import APIRouter, Request, Response
from pydantic import BaseModel

from service.handling.every_rule import RULE_GROUPS
from service.handling.rule import Evidence
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.views.shell.page import show_page

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


@router.get("/rules", dependencies=[needs(Role.VIEW)], include_in_schema=False)
def rules_page(request: Request) -> Response:
    """Show the same as a page."""
    values = {"groups": RULE_GROUPS, "twin": TWIN}
    return show_page(request, "rules.html", values)
