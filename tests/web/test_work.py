from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from service.errors import (
    ContentsError,
    NoFreePositionError,
    StartPositionError,
    UnknownCardKindError,
    UnknownStockError,
    UnreadableFileError,
)
from service.pipeline.ready import Workshop
from service.web.work import Choice, Done, Failed, Job, Picture, do_job
from service.wiring import open_workshop
from tests.web.sent import ONE_BOX, PHOTOS, one_box, records_part

STOCK = "A4 2x4 99.1x67.7"
LABELS = Choice(kinds=("end-label",), stock=STOCK)


@pytest.fixture(scope="module")
def workshop(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Workshop]:
    """Open a workshop of one child process."""
    with open_workshop(tmp_path_factory.mktemp("data"), processes=1) as opened:
        yield opened


@pytest.mark.parametrize(
    ("choice", "error"),
    [
        pytest.param(Choice(kinds=("poster",)), UnknownCardKindError, id="kind"),
        pytest.param(Choice(stock="A9"), UnknownStockError, id="stock"),
        pytest.param(Choice(stock=STOCK, start_position=9), StartPositionError, id="position"),
    ],
)
def test_choice_is_looked_up(choice: Choice, error: type[Exception]) -> None:
    """What does not exist is known before anything is read."""
    with pytest.raises(error):
        choice.to_options()


def test_labels_are_printed(workshop: Workshop) -> None:
    """One kind on one stock gives one file, and its first sheet as a picture."""
    done = do_job(Job(ONE_BOX.read_bytes(), {}, LABELS, Picture(1, 72)), workshop)
    assert isinstance(done, Done)
    assert [(file.kind, file.stock, file.sheets) for file in done.files] == [
        ("end-label", STOCK, 1)
    ]
    assert done.files[0].pdf.startswith(b"%PDF")
    assert done.picture.startswith(b"\x89PNG")


def test_names_in_records_open_no_file(workshop: Workshop) -> None:
    """A record that names a file of this machine gets no photo of it."""
    document = one_box()
    theirs = str(PHOTOS / "X.112_front.jpg")
    for each in document["objects"]:
        each["photos"] = [{"file": theirs, "role": "front"}]
    ((_, (_, data, _)),) = records_part(document)
    done = do_job(Job(data, {}), workshop)
    assert isinstance(done, Done)
    missing = [each for each in done.findings if each.code == "photo-missing"]
    assert [each.where.file for each in missing] == [theirs]
    sent = do_job(Job(data, {theirs: Path(theirs)}), workshop)
    assert isinstance(sent, Done)
    assert "photo-missing" not in {each.code for each in sent.findings}


@pytest.mark.parametrize(
    ("records", "choice", "error"),
    [
        pytest.param(b"{", None, UnreadableFileError, id="not JSON"),
        pytest.param(b'{"objects": [NaN]}', None, UnreadableFileError, id="not a number"),
        pytest.param(b"{}", Choice(), ContentsError, id="nothing to print"),
        pytest.param(
            ONE_BOX.read_bytes(),
            Choice(kinds=("end-label",), stock=STOCK, skipped=frozenset(range(1, 9))),
            NoFreePositionError,
            id="no position left",
        ),
    ],
)
def test_failure_is_an_answer(
    workshop: Workshop, records: bytes, choice: Choice | None, error: type[Exception]
) -> None:
    """An error of ours comes back with what was noticed, and the workshop goes on."""
    failed = do_job(Job(records, {}, choice), workshop)
    assert isinstance(failed, Failed)
    assert isinstance(failed.error, error)
    assert bool(failed.findings) == (len(records) > 100)


def test_a_date_that_has_passed_is_told(workshop: Workshop) -> None:
    """The press knows the day, so that a packing past its date is noticed in a check."""
    document = one_box()
    document["containers"][0]["temporary_until"] = "2001-01-31"
    ((_, (_, data, _)),) = records_part(document)
    done = do_job(Job(data, {}), workshop)
    assert isinstance(done, Done)
    assert "repack-overdue" in {each.code for each in done.findings}
