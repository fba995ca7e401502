from __future__ import annotations

from service.handling.checks.kinds import CheckResult
from service.store.base.columns import metadata
from service.store.kept.check_tables import check_results, checks


def test_the_tables_are_of_the_store() -> None:
    """Both belong to the tables that are made, and each result of the code may be kept."""
    assert metadata.tables["checks"] is checks
    assert metadata.tables["check_results"] is check_results
    (guard,) = [one for one in check_results.constraints if "known" in str(one.name)]
    allowed = str(guard.sqltext)  # type: ignore[attr-defined] # it is the one that checks
    assert allowed == f"result IN ({', '.join(repr(one.value) for one in CheckResult)})"
