"""Words of others on a page: in the language of the reader, or marked as English."""

from __future__ import annotations

from collections.abc import Iterable

from markupsafe import Markup, escape

from service.cards.kinds import CardKind
from service.errors import ServiceError
from service.findings import Finding
from service.languages.saying import find_said, said


def told(english: str) -> Markup:
    """Show a sentence; one without a translation is marked as English (WCAG 2.2, 3.1.2)."""
    words = find_said(english)
    if words is None:
        return Markup('<span lang="en">{}</span>').format(english)
    return escape(words)


def say_error(error: ServiceError) -> str:
    """Say what happened, in the language of the reader."""
    return said(error.sentence)


def tell_error(error: ServiceError) -> str:
    """Tell an error beside a field: what happened, and what to do about it."""
    return f"{say_error(error)} {said(error.advice)}"


def tell_finding(finding: Finding) -> str:
    """Tell a finding beside a field: what was noticed, and what to do about it."""
    return f"{said(finding.message)} {said(finding.advice)}"


def tell_fault(fault: str) -> str:
    """Tell as a sentence what was noticed as part of one."""
    words = said(fault)
    return f"{words[:1].upper()}{words[1:]}."


def say_kinds(kinds: Iterable[CardKind]) -> str:
    """Name kinds of cards in a line."""
    return ", ".join(said(kind.name) for kind in kinds)
