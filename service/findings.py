"""What was noticed in the user's data: data itself, never an exception.

A finding says where, what was understood and what to do. Its code is stable, so that a person can
look it up and a program can act on it; `CODES` lists every one with its usual severity and advice.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from service.sentence import Sentence


class Severity(StrEnum):
    """How much a finding matters to what is printed."""

    ERROR = "error"
    """Something asked for is not printed, or not as asked."""
    WARNING = "warning"
    """Printed, but a person should look."""
    NOTE = "note"
    """Good to know."""


@dataclass(frozen=True, slots=True)
class Where:
    """The place of a finding; every part may be unknown.

    `row` is the row of a table as a spreadsheet counts it: 1 is the heading.
    """

    file: str = ""
    row: int | None = None
    column: str = ""
    object_number: str = ""
    container_number: str = ""

    def __str__(self) -> str:
        """Name the place the way a person would look for it."""
        parts = [
            self.file,
            f"row {self.row}" if self.row is not None else "",
            f"column {self.column}" if self.column else "",
            self.container_number,
            self.object_number,
        ]
        return ", ".join(part for part in parts if part)


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing noticed: code, severity, place, a sentence, and what to do."""

    code: str
    severity: Severity
    where: Where
    message: str
    advice: str


@dataclass(frozen=True, slots=True)
class FindingCode:
    """A row of the catalogue of findings."""

    severity: Severity
    advice: str


_E, _W, _N = Severity.ERROR, Severity.WARNING, Severity.NOTE

CODES: dict[str, FindingCode] = {
    # Tables and documents.
    "row-without-number": FindingCode(_E, "Give the row its number; it was left out."),
    "duplicate-number": FindingCode(_E, "Keep one of the rows; the first one was used."),
    "unknown-column": FindingCode(_N, "Nothing to do: the column is kept but not printed."),
    "unreadable-characters": FindingCode(_W, "Save the file as UTF-8 and use it again."),
    "control-characters": FindingCode(_W, "Retype the cell; unseen characters were taken out."),
    "text-too-long": FindingCode(_W, "Shorten the text, or let the catalogue hold the rest."),
    "number-like-object-number": FindingCode(
        _W, "Compare it with the object: a spreadsheet may have changed the number."
    ),
    "wrong-type": FindingCode(_E, "Correct the field; it was left out."),
    "guessed-encoding": FindingCode(_W, "Check letters with accents, or save the file as UTF-8."),
    "unbalanced-quote": FindingCode(_W, "Check the row, and write a quotation mark twice in it."),
    "extra-cells": FindingCode(_W, "Check the row: a delimiter inside a cell needs quotes around."),
    "skipped-row": FindingCode(_N, "Nothing to do, unless the row holds a record."),
    "skipped-sheet": FindingCode(_N, "Name the sheet objects, containers or packings to use it."),
    "headings-recognised": FindingCode(_N, "Look whether each column holds what is said here."),
    "unusable-mapping": FindingCode(_E, "Correct the mapping and save it again."),
    "mapping-used": FindingCode(_N, "Nothing to do, if this is the export that it was made for."),
    "changed-since-import": FindingCode(_W, "Look at it, and change it by hand if you want to."),
    "kept-of-import": FindingCode(_W, "Nothing to do, unless it should go: then see what uses it."),
    "import-not-undoable": FindingCode(_E, "Take the former export in again, or change by hand."),
    "not-exported": FindingCode(_N, "Nothing to do: restricted records are not handed on."),
    "more-findings": FindingCode(_W, "Correct what is listed and use the file again."),
    # Cells.
    "unreadable-dimensions": FindingCode(_W, "Write for instance: H 12.5 x W 8 x D 3 cm."),
    "impossible-measure": FindingCode(_W, "Correct the measure; it was left out."),
    "unreadable-weight": FindingCode(_W, "Write for instance: 1.2 kg, or ca. 300 g."),
    "unreadable-date": FindingCode(_W, "Write the date as 2026-10-14."),
    "unreadable-count": FindingCode(_W, "Write a whole number."),
    "unreadable-yes-or-no": FindingCode(_W, "Write yes or no."),
    "unreadable-grid": FindingCode(_W, "Write columns x rows, for instance 3 x 2."),
    "unknown-hazard": FindingCode(_W, "Choose a code from the list; it prints as written."),
    "unknown-hazard-state": FindingCode(
        _W, "Write confirmed, presumed or unchecked; it prints as unchecked."
    ),
    "no-hazard-claimed": FindingCode(
        _N, "Nothing to do: the card says nothing of hazards, which is no promise."
    ),
    "unknown-hang-factor": FindingCode(_W, "Choose a factor from the list; it was kept."),
    "unknown-photo-role": FindingCode(_W, "Write front, back or detail in the brackets."),
    "unknown-caution": FindingCode(_W, "Choose a code from the list; it prints as written."),
    "unknown-container-kind": FindingCode(_W, "Choose a known kind; it is treated as a box."),
    "unknown-lid": FindingCode(_W, "Write opaque, clear or none; it is treated as opaque."),
    "unknown-region": FindingCode(
        _W, "Write uk, us or elsewhere; whom to consult is said in words for any country."
    ),
    "unknown-language": FindingCode(
        _W, "Write cy, fr, de, es, pl or none; cards are worded in English alone."
    ),
    "unusable-address": FindingCode(_W, "Use an https address; the museum's pattern is used."),
    "lifting-choice": FindingCode(
        _E, "Correct it in the group lifting; the usual choice was used."
    ),
    # Packings.
    "packing-disagrees": FindingCode(
        _W, "Make the rows of the container agree; what its first row says was used."
    ),
    "unknown-object": FindingCode(_E, "Add the object to the records; its number prints alone."),
    "unknown-container": FindingCode(_E, "Add the container to the records; nothing is printed."),
    "empty-container": FindingCode(_N, "Nothing to do, unless something should be in it."),
    "object-in-two-places": FindingCode(
        _E, "Correct one of the packings: an object can be in one place only."
    ),
    "unreadable-place": FindingCode(_W, "Write the layer as a number and the compartment as B3."),
    "compartment-outside-grid": FindingCode(_W, "Correct the compartment or the grid."),
    "nested-in-itself": FindingCode(_E, "Correct which container lies in which."),
    "over-weight-limit": FindingCode(_W, "Take something out, or weigh it again."),
    # How it is packed.
    "heavy-above-light": FindingCode(_W, "Put the heavier one into the lower layer."),
    "heavy-above-fragile": FindingCode(_W, "Put the fragile one on top, or give each a tray."),
    "under-others": FindingCode(_W, "Put it on top, or where nothing can press on it."),
    "pins-in-textile": FindingCode(
        _W, "Have pins and staples taken out by somebody trained, or isolate them; ask first."
    ),
    "metal-against-textile": FindingCode(_W, "Put acid-free tissue or cotton between them."),
    "conflicting-materials": FindingCode(_W, "Ask a conservator first, then pack them apart."),
    "unsuitable-material": FindingCode(
        _W, "Replace it, for instance by acid-free board or closed-cell polyethylene foam."
    ),
    "temporary-material": FindingCode(_W, "Replace it, or record a date to repack by."),
    "repack-overdue": FindingCode(_W, "Repack it, or record a new date with its reason."),
    "object-too-large": FindingCode(_W, "Measure both again, or choose a larger container."),
    "unpadded-fold": FindingCode(_W, "Pad every fold with acid-free tissue."),
    "folded-against-record": FindingCode(_W, "Choose a container in which it lies unfolded."),
    "covered-lid": FindingCode(_W, "Fix the card beside the lid: the view stays free."),
    "stacking-limit-disagrees": FindingCode(
        _W, "Set the limit to nothing on top, or correct the caution of the object."
    ),
    "overfilled": FindingCode(_W, "Divide the contents between two boxes where that is possible."),
    "hung-against-advice": FindingCode(
        _W, "Ask whoever cares for textiles, then lay it flat in a box, every fold padded."
    ),
    "unknown-packing-check": FindingCode(
        _E, "Write the code of a check as README lists it; nothing was turned off by this one."
    ),
    # Photos.
    "photo-missing": FindingCode(_W, "Put the photo into the folder under the name given."),
    "photo-unusable": FindingCode(_W, "Open the photo, save it again as JPEG, and use that file."),
    "photo-not-named": FindingCode(_N, "Name the photo in a record, or take the file away."),
    "photo-matched": FindingCode(_N, "Look whether each photo shows its object."),
    "photo-ambiguous": FindingCode(_W, "Name the photo in the record of the object it shows."),
    "photo-too-small": FindingCode(_N, "Take a larger photo when the object is next handled."),
    "no-photo": FindingCode(_N, "Take a photo when the object is next handled."),
    "no-title": FindingCode(_N, "Record in a few words what it is."),
    # Printing.
    "hazard-presumed": FindingCode(
        _N, "Open nothing to find out: have it checked by those who may, and record the result."
    ),
    "cannot-be-printed": FindingCode(_W, "Replace the character; a mark stands in its place."),
    "shortened": FindingCode(_N, "Nothing to do: the contents list has the whole text."),
    "card-too-large": FindingCode(_W, "Choose a smaller card or fix the card beside the lid."),
    "nobody-to-ask": FindingCode(_W, "Set whom to ask: a role and a telephone number."),
    "no-lid-size": FindingCode(_N, "Measure the lid so that the card can be chosen to fit."),
    "symbol-without-address": FindingCode(_N, "Set the museum's address pattern."),
    "position-left-empty": FindingCode(
        _N, "Nothing to do; a measured printer with smaller edges may reach it."
    ),
    "card-failed": FindingCode(_E, "This card was not printed. See the reason and try again."),
}


def make_finding(
    code: str, where: Where, message: Sentence, *, advice: Sentence | None = None
) -> Finding:
    """Make a finding with the severity and advice the catalogue gives for its code."""
    entry = CODES[code]
    return Finding(code, entry.severity, where, message, advice or entry.advice)


def worst_severity(findings: Iterable[Finding]) -> Severity | None:
    """Name the worst severity among `findings`; None where there are none."""
    order = (Severity.ERROR, Severity.WARNING, Severity.NOTE)
    present = {finding.severity for finding in findings}
    return next((severity for severity in order if severity in present), None)
