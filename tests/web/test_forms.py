from __future__ import annotations

import io
from pathlib import Path

import pytest
from fastapi import UploadFile

from service.web import forms
from service.web.forms import PrintForm, receive
from service.web.replies.refusals import Refusal, RefusedError

HOSTILE = [
    "../../../etc/cron.d/x.jpg",
    "/etc/passwd",
    "C:\\Windows\\x.jpg",
    "\\\\server\\share\\x.jpg",
    "x\u202egpj.exe",
    "nul\x00.jpg",
    "a" * 5000,
    ".",
    "",
]


def _upload(name: str, data: bytes = b"photo") -> UploadFile:
    return UploadFile(io.BytesIO(data), filename=name)


@pytest.mark.parametrize("name", HOSTILE, ids=ascii)
def test_upload_names_are_never_paths(name: str) -> None:
    """A photo lies under a number in a folder of ours, whatever it is called, and goes again."""
    form = PrintForm(records="{}", photos=[_upload("first.jpg"), _upload(name)])
    with receive(form) as job:
        path = job.photos[name]
        assert path.name == "0001"
        assert path.read_bytes() == b"photo"
        assert sorted(path.parent.iterdir()) == [path.parent / "0000", path]
    assert not path.parent.exists()


def test_photos_go_also_after_a_failure() -> None:
    """Nothing of a request stays when its work fails."""
    kept: list[Path] = []

    def fail() -> None:
        with receive(PrintForm(records="{}", photos=[_upload("a")])) as job:
            kept.append(job.photos["a"])
            raise RuntimeError

    with pytest.raises(RuntimeError):
        fail()
    assert not kept[0].parent.exists()


def test_one_name_for_two_photos_is_refused() -> None:
    """Which of two photos is meant cannot be told, so neither is taken."""
    form = PrintForm(records="{}", photos=[_upload("a.jpg"), _upload("a.jpg")])
    with pytest.raises(RefusedError) as refused, receive(form):
        pass
    assert refused.value.code is Refusal.SAME_PHOTO_TWICE


@pytest.mark.parametrize(
    "sent", ["x" * 11, _upload("records.json", b"x" * 11)], ids=["text", "file"]
)
def test_records_have_a_limit(sent: UploadFile | str, monkeypatch: pytest.MonkeyPatch) -> None:
    """A document larger than what is read is refused, as text and as file."""
    monkeypatch.setattr(forms, "MOST_RECORDS_BYTES", 10)
    with pytest.raises(RefusedError) as refused, receive(PrintForm(records=sent)):
        pass
    assert refused.value.code is Refusal.TOO_LARGE


def test_choice_is_handed_on() -> None:
    """Every field of the form reaches the print."""
    form = PrintForm(
        records="{}", kind=["lid-card"], stock="A4 card", paper="Letter", start=2, skip=[3, 3],
        copies=4, container=["B1"], page=5, dpi=72,
    )  # fmt: skip
    choice = form.to_choice()
    assert (choice.kinds, choice.stock, choice.paper) == (("lid-card",), "A4 card", "Letter")
    assert (choice.start_position, choice.skipped, choice.copies) == (2, frozenset({3}), 4)
    assert choice.containers == {"B1"}
    assert (form.to_picture().page, form.to_picture().resolution_dpi) == (5, 72)
