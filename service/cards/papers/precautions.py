"""What papers of the round say of every container, whatever is recorded of it."""

from __future__ import annotations

ISOLATED = "Isolated"
LEAVE_ALONE = "Do not open, move or unpack. Only who is asked below may end this."
SILENT = "No hazard is recorded; that does not mean there is none."
NOTHING_RECORDED = "Nothing is recorded of it: treat its hazards as not checked."
FOUND = (
    "Something found: close it, do not shake it or carry it about uncovered, isolate it, and"
    " tell whom to ask. Where a box says do not open, ask first."
)
NO_PROMISE = "A hazard that is not named here may still be there: nothing recorded is no promise."

PRECAUTIONS = (ISOLATED, LEAVE_ALONE, SILENT, NOTHING_RECORDED, FOUND, NO_PROMISE)
"""All of them, to be said in a second language too."""
