"""Files that were sent to be looked at: kept a while beside the store, which knows nothing of them.

They go by a hash of their names and bytes, so what was looked at is what is taken in.
"""

from __future__ import annotations

import json
import shutil
import tempfile
import zipfile
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path, PurePosixPath
from typing import BinaryIO

from service.errors import MissingSourceError, NotFoundError, UnreadableFileError
from service.keeping.desk import Desk
from service.keeping.photos.plan import plain_name
from service.keeping.photos.sources import open_photos
from service.keeping.previews.kept_plans import KeptPlans
from service.records.darwin.rows import META_FILE
from service.sentence import Sentence

FOLDER = "intake"
MOST_BYTES = 64 * 1024 * 1024
"""The largest table or document that is looked into."""
_KEPT = 60
_KEPT_BYTES = 2_000_000_000
_NAMES = "names.json"
_NOTHING = "neither a table, nor a document of records, nor a photo"
_TABLES = frozenset({"csv", "tsv", "txt", "xlsx", "xlsm", "ods", "json", "xml", "toml", "zip"})
_PICTURES = frozenset({"jpg", "jpeg", "png", "tif", "tiff", "webp", "heic", "heif", "gif", "bmp"})


@dataclass(frozen=True, slots=True)
class KeptFiles:
    """What was sent: tables and documents, photos, and the names of what is neither.

    `name` is what it goes by; a file is found under the name that it came with.
    """

    name: str
    records: Mapping[str, Path] = field(default_factory=dict)
    photos: Mapping[str, Path] = field(default_factory=dict)
    left_out: tuple[str, ...] = ()


def open_kept(data_folder: Path) -> KeptPlans:
    """Open the folder in which they are kept, for a day and bounded in number and size."""
    return KeptPlans(data_folder / FOLDER, most_plans=_KEPT, most_bytes=_KEPT_BYTES)


def keep_files(desk: Desk, sent: Iterable[tuple[str, BinaryIO]]) -> str:
    """Keep what was sent and give its name; a packed folder is unpacked.

    Raises:
        MissingSourceError: When there is no table, no document and no photo in it.
        UnreadableFileError: When a packed folder is damaged, or a table is too large.
    """
    scratch = desk.workshop.scratch_folder
    with tempfile.TemporaryDirectory(dir=scratch) as around:
        made = Path(around) / "made"
        made.mkdir()
        names: dict[str, str] = {}
        left_out = list(_sort_in(_unpacked(sent, Path(around)), made, names))
        if not names:
            raise MissingSourceError(_told(left_out), reason=_NOTHING)
        said = {"files": names, "left_out": sorted(left_out)}
        (made / _NAMES).write_text(json.dumps(said, sort_keys=True), encoding="utf-8")
        return open_kept(desk.data_folder).keep(made)


def find_kept(data_folder: Path, name: str) -> KeptFiles:
    """Find what was sent.

    Raises:
        NotFoundError: When it is no longer kept.
    """
    kept = open_kept(data_folder)
    said = json.loads(kept.find(name, _NAMES).read_text(encoding="utf-8"))
    paths = {sent: kept.find(name, own) for own, sent in said["files"].items()}
    return KeptFiles(
        name,
        {sent: path for sent, path in paths.items() if not _is_picture(sent)},
        {sent: path for sent, path in paths.items() if _is_picture(sent)},
        tuple(said["left_out"]),
    )


def keep_note(desk: Desk, file: str, text: str) -> str:
    """Keep a text for as long as files are kept, and give its name."""
    with tempfile.TemporaryDirectory(dir=desk.workshop.scratch_folder) as around:
        made = Path(around) / "made"
        made.mkdir()
        (made / file).write_text(text, encoding="utf-8")
        return open_kept(desk.data_folder).keep(made)


def find_note(data_folder: Path, name: str, file: str) -> str:
    """Give a text that was kept; empty where it no longer is."""
    try:
        return open_kept(data_folder).find(name, file).read_text(encoding="utf-8")
    except NotFoundError:
        return ""


def _unpacked(sent: Iterable[tuple[str, BinaryIO]], around: Path) -> Iterator[tuple[str, BinaryIO]]:
    """Give every file; those of a packed folder that is no archive of records one by one.

    Raises:
        UnreadableFileError: When a packed folder is damaged, locked or too large.
    """
    for number, (said, content) in enumerate(sent):
        name = PurePosixPath(said.replace("\\", "/")).name
        if _ending(name) != "zip" or _is_archive(content):
            yield name, content
            continue
        packed = around / f"{number}.zip"
        with packed.open("wb") as copy:
            shutil.copyfileobj(content, copy)
        try:
            with open_photos(packed, scratch=around) as bulk:
                for inner, path in bulk.files.items():
                    with path.open("rb") as file:
                        yield inner, file
        except UnreadableFileError as error:
            raise UnreadableFileError(name, tried=error.tried) from error


def _sort_in(
    files: Iterable[tuple[str, BinaryIO]], made: Path, names: dict[str, str]
) -> Iterator[str]:
    """Copy what can be used under names of our own, and give the names of the rest.

    Raises:
        UnreadableFileError: When a table is too large.
    """
    seen = set[str]()
    for number, (name, content) in enumerate(files):
        ending = _ending(name)
        is_usable = ending in _TABLES or ending in _PICTURES
        if not is_usable or name.startswith(".") or plain_name(name) in seen:
            yield name
            continue
        own = f"{number:05d}"
        with (made / own).open("wb") as copy:
            shutil.copyfileobj(content, copy)
            if ending in _TABLES and copy.tell() > MOST_BYTES:
                raise UnreadableFileError(
                    name,
                    tried=Sentence(
                        "it is larger than {most_bytes} MB", most_bytes=MOST_BYTES >> 20
                    ),
                )
        seen.add(plain_name(name))
        names[own] = name


def _is_archive(content: BinaryIO) -> bool:
    """Tell an archive of records from a packed folder."""
    try:
        with zipfile.ZipFile(content) as packed:
            return META_FILE in packed.namelist()
    except (zipfile.BadZipFile, NotImplementedError, OSError, ValueError):
        return False
    finally:
        content.seek(0)


def _told(names: list[str]) -> str:
    return ", ".join(names[:5]) or "What was sent"


def _ending(name: str) -> str:
    return name.rpartition(".")[2].casefold()


def _is_picture(name: str) -> bool:
    return _ending(name) in _PICTURES
