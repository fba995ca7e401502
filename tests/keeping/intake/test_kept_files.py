"""Tests for files that were sent to be looked at."""

from __future__ import annotations

import io
import zipfile

import pytest

from service.errors import MissingSourceError, NotFoundError, UnreadableFileError
from service.keeping.desk import Desk
from service.keeping.intake import kept_files
from service.keeping.intake.kept_files import find_kept, find_note, keep_files, keep_note


def packed(**files: bytes) -> io.BytesIO:
    """Pack files as a folder, `__` in a name standing for a dot."""
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w") as folder:
        for name, data in files.items():
            folder.writestr(f"folder/{name.replace('__', '.')}", data)
    target.seek(0)
    return target


def test_what_was_sent_is_found_by_its_content(desk: Desk) -> None:
    """Tables and photos are told apart, paths in names are dropped, the rest is told."""
    sent = [("x/objects.csv", b"no\n1"), ("1_front.jpg", b"jpeg"), (".DS_Store", b"?")]
    names = [keep_files(desk, [(name, io.BytesIO(data)) for name, data in sent]) for _ in "ab"]
    assert names[0] == names[1]
    kept = find_kept(desk.data_folder, names[0])
    assert kept.records["objects.csv"].read_bytes() == b"no\n1"
    assert (list(kept.photos), kept.left_out) == (["1_front.jpg"], (".DS_Store",))


def test_a_packed_folder_is_unpacked(desk: Desk) -> None:
    """What is in it counts as if it was sent file by file."""
    name = keep_files(desk, [("all.zip", packed(objects__csv=b"no\n1", a__jpg=b"jpeg"))])
    kept = find_kept(desk.data_folder, name)
    assert (list(kept.records), list(kept.photos)) == (["objects.csv"], ["a.jpg"])


def test_an_archive_of_records_stays_packed(desk: Desk) -> None:
    """A Darwin Core Archive is one document."""
    name = keep_files(desk, [("skins.zip", packed(meta__xml=b"<archive/>"))])
    assert "skins.zip" not in find_kept(desk.data_folder, name).records
    archive = io.BytesIO()
    with zipfile.ZipFile(archive, "w") as folder:
        folder.writestr("meta.xml", b"<archive/>")
    archive.seek(0)
    assert (
        "skins.zip"
        in find_kept(desk.data_folder, keep_files(desk, [("skins.zip", archive)])).records
    )


def test_what_cannot_be_used_is_refused(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing to use, a damaged folder, and a table that is too large."""
    with pytest.raises(MissingSourceError, match=r"letter\.doc"):
        keep_files(desk, [("letter.doc", io.BytesIO(b"x"))])
    with pytest.raises(UnreadableFileError, match=r"all\.zip"):
        keep_files(desk, [("all.zip", io.BytesIO(b"no folder"))])
    monkeypatch.setattr(kept_files, "MOST_BYTES", 3)
    with pytest.raises(UnreadableFileError, match="larger"):
        keep_files(desk, [("a.csv", io.BytesIO(b"1234"))])


def test_what_is_no_longer_kept_is_told(desk: Desk) -> None:
    """A name that was sent is never opened as a path; a note that is gone is empty."""
    with pytest.raises(NotFoundError):
        find_kept(desk.data_folder, "../../etc")
    note = keep_note(desk, "how.json", "{}")
    assert find_note(desk.data_folder, note, "how.json") == "{}"
    assert find_note(desk.data_folder, "0", "how.json") == ""
