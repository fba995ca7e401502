"""Completes a record whose source has no column for some fields: those stay as they are stored."""

from __future__ import annotations

from dataclasses import fields, replace
from typing import TypeVar

from service.records.record import ContainerRecord, ObjectRecord
from service.records.rows.said import Columns, is_said

Record = TypeVar("Record", ObjectRecord, ContainerRecord)


def complete(record: Record, stored: Record, said: Columns) -> Record:
    """Give the record with every field that these columns do not say as it was.

    The cells of its source are added to those that it had from other sources, so that two exports
    taken in by turns change nothing.
    """
    kept = {
        each.name: getattr(stored, each.name)
        for each in fields(record)
        if each.compare and not is_said(each.name, said)
    }
    return replace(record, **kept, source={**stored.source, **record.source})
