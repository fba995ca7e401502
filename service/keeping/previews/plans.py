"""A print run before it is made: its files, sheets and positions, as they would be printed now."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date

from service.errors import ContentsError, PlanTooLargeError
from service.findings import Finding
from service.keeping.desk import Desk
from service.keeping.previews.kept_plans import FOLDER, KeptPlans
from service.keeping.previews.layout import PlannedSheet, tell_sheets
from service.keeping.printing.wanted import load_wanted
from service.pipeline.options import PrintFile, PrintOptions
from service.pipeline.run import plan_collection
from service.sentence import Sentence
from service.store.lists.pages import list_containers
from service.store.open import reading

MOST_CONTAINERS = 250
MOST_CARDS = 1_000
"""More than anybody looks at; cards that are new take a hundredth of a second each."""


@dataclass(frozen=True, slots=True)
class PlannedFile:
    """A file that a run would make, and its sheets."""

    file: PrintFile
    sheets: tuple[PlannedSheet, ...]


@dataclass(frozen=True, slots=True)
class Plan:
    """What a run would make, the name its files are kept under, and what was noticed."""

    name: str
    files: tuple[PlannedFile, ...]
    findings: tuple[Finding, ...]


def open_plans(desk: Desk) -> KeptPlans:
    """Open the folder in which the files of plans are kept for a while."""
    return KeptPlans(desk.data_folder / FOLDER)


def plan_run(desk: Desk, options: PrintOptions, *, today: date) -> Plan:
    """Plan a run: every card worded, fitted, inked and put in its place, and nothing remembered.

    Raises:
        PlanTooLargeError: When it is more than anybody looks at.
        ContentsError: When there is nothing to print, or nothing of it can be printed.
        NotFoundError: When the tag of an object is asked for that is not in the store.
        SheetError: When the stock asked for cannot take the pages.
    """
    _refuse_large(desk, options)
    wanted = load_wanted(desk, replace(options, today=today))
    laid, findings = plan_collection(
        wanted.collection, wanted.photos, wanted.options, desk.workshop
    )
    if not laid:
        message = Sentence(
            "None of the cards could be drawn. {message}", message=findings[0].message
        )
        raise ContentsError(message)
    name = open_plans(desk).keep(laid[0].file.path.parent)
    files = tuple(
        PlannedFile(each.file, tell_sheets(each, goes_on=bool(options.begun))) for each in laid
    )
    return Plan(name, files, findings)


def _refuse_large(desk: Desk, options: PrintOptions) -> None:
    """Refuse before anything is loaded.

    Raises:
        PlanTooLargeError: When it is more than anybody looks at.
    """
    if len(options.only) > MOST_CARDS:
        raise PlanTooLargeError(most=MOST_CARDS, what="cards")
    containers = len(options.containers)
    if not options.only and not containers:
        with reading(desk.engine) as connection:
            containers = len(list_containers(connection, limit=MOST_CONTAINERS + 1).records)
    if containers > MOST_CONTAINERS:
        raise PlanTooLargeError(most=MOST_CONTAINERS, what="containers")
