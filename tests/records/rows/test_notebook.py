from __future__ import annotations

from service.findings import Where
from service.records.rows.notebook import FINDINGS_LIMIT, Notebook
from service.sentence import Sentence


def test_findings_keep_their_order() -> None:
    """Findings come out in the order in which a reader met them."""
    notebook = Notebook()
    notebook.note("wrong-type", Where(row=2), Sentence("First."))
    notebook.note("wrong-type", Where(row=1), Sentence("Second."), advice=Sentence("Do this."))
    first, second = notebook.findings()
    assert (first.message, second.message, second.advice) == ("First.", "Second.", "Do this.")


def test_too_many_findings_are_counted() -> None:
    """A hostile file cannot fill memory, and a person learns how much is not listed."""
    notebook = Notebook()
    for row in range(FINDINGS_LIMIT + 7):
        notebook.note("wrong-type", Where(row=row), Sentence("Wrong."))
    findings = notebook.findings()
    assert len(findings) == FINDINGS_LIMIT + 1
    assert findings[-1].code == "more-findings"
    assert findings[-1].message.startswith("7 more")
