"""Tests for opening photos in bulk."""

from __future__ import annotations

import io
import zipfile
from pathlib import Path

import pytest

from service.errors import MissingSourceError, UnreadableFileError
from service.keeping.photos import sources
from service.keeping.photos.sources import open_photos


def packed(path: Path, entries: dict[str, bytes]) -> Path:
    """Write a ZIP file."""
    with zipfile.ZipFile(path, "w") as target:
        for name, data in entries.items():
            target.writestr(name, data)
    return path


def test_folders_are_read_to_their_depth(tmp_path: Path) -> None:
    """Files are known by their names; a name that comes twice, and a link, are left out."""
    (tmp_path / "in" / "deep").mkdir(parents=True)
    (tmp_path / "in" / "a.jpg").write_bytes(b"1")
    (tmp_path / "in" / "deep" / "a.jpg").write_bytes(b"2")
    (tmp_path / "in" / "deep" / "b.jpg").write_bytes(b"3")
    (tmp_path / "in" / "link.jpg").symlink_to("/etc/hostname")
    with open_photos(tmp_path / "in", scratch=tmp_path) as bulk:
        assert sorted(bulk.files) == ["a.jpg", "b.jpg"]
        assert bulk.files["a.jpg"].read_bytes() == b"1"
        assert bulk.left_out == ("deep/a.jpg", "link.jpg")


def test_names_in_an_archive_never_become_paths(tmp_path: Path) -> None:
    """Names that lead elsewhere are names like others, and nothing stays when it is closed."""
    names = ["../../evil.jpg", "/somewhere/b.jpg", "C:\\photos\\c.jpg", "d.jpg", "again/d.jpg"]
    source = packed(tmp_path / "p.zip", {name: name.encode() for name in names})
    before = sorted(tmp_path.iterdir())
    with open_photos(source, scratch=tmp_path) as bulk:
        assert sorted(bulk.files) == ["b.jpg", "c.jpg", "d.jpg", "evil.jpg"]
        assert bulk.files["evil.jpg"].read_bytes() == b"../../evil.jpg"
        assert all(path.is_relative_to(tmp_path) for path in bulk.files.values())
        assert bulk.left_out == ("again/d.jpg",)
    assert sorted(tmp_path.iterdir()) == before


def test_links_in_an_archive_are_left_out(tmp_path: Path) -> None:
    """A link would be written as a file with a path in it, which shows nothing."""
    link = zipfile.ZipInfo("link.jpg")
    link.create_system, link.external_attr = 3, 0o120777 << 16
    with zipfile.ZipFile(tmp_path / "p.zip", "w") as target:
        target.writestr(link, "/etc/hostname")
    with open_photos(tmp_path / "p.zip", scratch=tmp_path) as bulk:
        assert (bulk.files, bulk.left_out) == ({}, ("link.jpg",))


def test_archives_over_the_limits_are_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Too many files or too many bytes are refused before anything is unpacked."""
    source = packed(tmp_path / "p.zip", {"a.jpg": b"1" * 9, "b.jpg": b"2" * 9})
    monkeypatch.setattr(sources, "TOTAL_LIMIT_BYTES", 17)
    with pytest.raises(UnreadableFileError, match="8 GB"), open_photos(source, scratch=tmp_path):
        pass
    monkeypatch.setattr(sources, "ENTRIES_LIMIT", 1)
    with pytest.raises(UnreadableFileError, match="files"), open_photos(source, scratch=tmp_path):
        pass


def test_one_file_over_the_limit_is_left_out(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The others are taken."""
    source = packed(tmp_path / "p.zip", {"a.jpg": b"1" * 9, "b.jpg": b"2"})
    monkeypatch.setattr(sources, "FILE_LIMIT_BYTES", 5)
    with open_photos(source, scratch=tmp_path) as bulk:
        assert (list(bulk.files), bulk.left_out) == (["b.jpg"], ("a.jpg",))


def test_a_file_that_says_less_than_it_holds_is_refused(tmp_path: Path) -> None:
    """What comes out is counted, whatever the archive claims."""
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as target:
        target.writestr("a.jpg", b"\0" * 100_000)
    data = stream.getvalue().replace((100_000).to_bytes(4, "little"), (7).to_bytes(4, "little"))
    (tmp_path / "p.zip").write_bytes(data)
    with (
        pytest.raises(UnreadableFileError),
        open_photos(tmp_path / "p.zip", scratch=tmp_path),
    ):
        pass


@pytest.mark.parametrize(
    "data", [b"", b"PK\x03\x04 cut", b"not a zip"], ids=["empty", "cut", "text"]
)
def test_what_is_no_archive_is_told(tmp_path: Path, data: bytes) -> None:
    """A file of another kind is refused with its name."""
    (tmp_path / "p.zip").write_bytes(data)
    with pytest.raises(UnreadableFileError), open_photos(tmp_path / "p.zip", scratch=tmp_path):
        pass
    with pytest.raises(MissingSourceError), open_photos(tmp_path / "no", scratch=tmp_path):
        pass


def test_names_that_differ_in_case_alone_are_one(tmp_path: Path) -> None:
    """In a folder and in an archive the first is taken and the other is told."""
    (tmp_path / "in").mkdir()
    (tmp_path / "in" / "A.JPG").write_bytes(b"1")
    (tmp_path / "in" / "a.jpg").write_bytes(b"2")
    source = packed(tmp_path / "p.zip", {"A.JPG": b"1", "a.jpg": b"2"})
    for place in (tmp_path / "in", source):
        with open_photos(place, scratch=tmp_path) as bulk:
            assert bulk.files["A.JPG"].read_bytes() == b"1"
            assert bulk.left_out == ("a.jpg",)


def test_a_file_packed_too_tightly_is_refused(tmp_path: Path) -> None:
    """A megabyte that would unpack to a gigabyte fills no disk."""
    with zipfile.ZipFile(tmp_path / "p.zip", "w", zipfile.ZIP_DEFLATED) as target:
        target.writestr("a.jpg", bytes(5_000_000))
    with (
        pytest.raises(UnreadableFileError, match="tightly"),
        open_photos(tmp_path / "p.zip", scratch=tmp_path),
    ):
        pass
