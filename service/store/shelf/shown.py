"""How objects show their photos: turned, cropped, in which order, on cards or not.

What is said of a photo belongs to its object and to its bytes: brought again, or named anew by a
record, it is shown as before; another picture under the same name is shown as it came.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace

from sqlalchemy import ColumnElement, Connection, RowMapping, and_, delete, insert, select

from service.errors import NotFoundError
from service.records.photos.edit import AS_IT_CAME, PhotoEdit, make_crop
from service.records.record import PhotoRole
from service.sentence import Sentence
from service.store.base.bulk import in_portions, load_keys
from service.store.canonical import dump_json
from service.store.history import Entry, Stamp, begin_change, write_history
from service.store.kept.intake_tables import photo_edits
from service.store.tables import objects, photos, stored_files

_EDITS: tuple[ColumnElement[object], ...] = tuple(
    photo_edits.c[name] for name in ("turns", "crop", "role", "place", "is_printed", "is_removed")
)
_IS_OF_PHOTO = and_(
    photo_edits.c.object_id == photos.c.object_id, photo_edits.c.sha256 == photos.c.sha256
)


@dataclass(frozen=True, slots=True)
class ShownPhoto:
    """A photo of an object whose file lies on the shelf, and how the object shows it.

    `brought_as` is the role it came with; `place` its place in an order that somebody gave.
    """

    file: str
    sha256: str
    suffix: str
    role: PhotoRole
    edit: PhotoEdit = AS_IT_CAME
    is_printed: bool = True
    is_removed: bool = False
    place: int | None = None
    brought_as: PhotoRole = field(default=PhotoRole.FRONT, compare=False)

    @property
    def is_on_cards(self) -> bool:
        """Whether cards may show it."""
        return self.is_printed and not self.is_removed


def load_shown(
    connection: Connection, object_numbers: Sequence[str]
) -> dict[str, tuple[ShownPhoto, ...]]:
    """Load the photos of objects whose files have been brought, in the order of showing.

    First come those that somebody put in order, then the others as records name them.
    """
    found: dict[str, list[ShownPhoto]] = {}
    for some in in_portions(object_numbers):
        query = (
            select(objects.c.object_number, photos.c.file, photos.c.role.label("brought_as"))
            .add_columns(stored_files.c.suffix, photos.c.sha256, *_EDITS)
            .join(photos, photos.c.object_id == objects.c.id)
            .join(stored_files, stored_files.c.sha256 == photos.c.sha256)
            .outerjoin(photo_edits, _IS_OF_PHOTO)
            .where(objects.c.object_number.in_(some))
            .order_by(photos.c.object_id, photo_edits.c.place.is_(None), photo_edits.c.place)
            .order_by(photos.c.position)
        )
        for row in connection.execute(query).mappings():
            found.setdefault(row["object_number"], []).append(_read(row))
    return {number: tuple(some) for number, some in found.items()}


def load_shown_of(connection: Connection, object_number: str) -> tuple[ShownPhoto, ...]:
    """Load the photos of one object.

    Raises:
        NotFoundError: When there is no such object.
    """
    if not load_keys(connection, objects, "object_number", [object_number]):
        raise NotFoundError(object_number, what="object")
    return load_shown(connection, [object_number]).get(object_number, ())


def find_shown(connection: Connection, object_number: str, sha256: str) -> ShownPhoto:
    """Load one photo of an object.

    Raises:
        NotFoundError: When there is no such object, or it has no such photo.
    """
    for shown in load_shown_of(connection, object_number):
        if shown.sha256 == sha256:
            return shown
    raise NotFoundError(
        sha256, what=Sentence("photo of {object_number}", object_number=object_number)
    )


def name_photo_file(connection: Connection, sha256: str) -> str:
    """Give the ending of the file of a photo that some object has.

    Raises:
        NotFoundError: When no object has such a photo, whatever else lies on the shelf.
    """
    query = (
        select(stored_files.c.suffix)
        .join(photos, photos.c.sha256 == stored_files.c.sha256)
        .where(stored_files.c.sha256 == sha256)
    )
    for suffix in connection.execute(query).scalars():
        return str(suffix)
    raise NotFoundError(sha256, what="photo")


def show_photo(
    connection: Connection, object_number: str, wanted: ShownPhoto, *, stamp: Stamp
) -> ShownPhoto:
    """Show a photo as wanted; as it is shown already changes nothing.

    Raises:
        NotFoundError: When there is no such object, or it has no such photo.
    """
    change = begin_change(connection, stamp)
    was = find_shown(connection, object_number, wanted.sha256)
    told = list(_tell(object_number, was, wanted))
    if told:
        _keep(connection, object_number, wanted)
    write_history(connection, change, told)
    return find_shown(connection, object_number, wanted.sha256)


def order_photos(
    connection: Connection, object_number: str, sha256s: Sequence[str], *, stamp: Stamp
) -> tuple[ShownPhoto, ...]:
    """Put photos of an object in order; those that are not named come behind them.

    Raises:
        NotFoundError: When there is no such object, or it has no such photo.
    """
    change = begin_change(connection, stamp)
    before = load_shown_of(connection, object_number)
    wanted = list(dict.fromkeys(sha256s))
    for sha256 in wanted:
        find_shown(connection, object_number, sha256)
    rest = [one.sha256 for one in before if one.sha256 not in wanted]
    places = {sha256: place for place, sha256 in enumerate(dict.fromkeys((*wanted, *rest)), 1)}
    if list(places) == list(dict.fromkeys(one.sha256 for one in before)):
        return before
    for one in before:
        _keep(connection, object_number, replace(one, place=places[one.sha256]))
    files = {one.sha256: one.file for one in before}
    detail = dump_json({"files": [files[sha256] for sha256 in places]})
    told = Entry("photos put in order", object_number=object_number, detail=detail)
    write_history(connection, change, [told])
    return load_shown_of(connection, object_number)


def forget_shown(connection: Connection, object_ids: Sequence[int]) -> None:
    """Take away what is said of the photos of objects that go."""
    for some in in_portions(object_ids):
        connection.execute(delete(photo_edits).where(photo_edits.c.object_id.in_(some)))


def _read(row: RowMapping) -> ShownPhoto:
    """Read a photo; where nothing was said of it, its columns are empty."""
    brought_as = PhotoRole(row["brought_as"])
    photo = ShownPhoto(row["file"], row["sha256"], row["suffix"], brought_as, brought_as=brought_as)
    if row["turns"] is None:
        return photo
    crop = make_crop(json.loads(row["crop"])) if row["crop"] else None
    return replace(
        photo,
        role=PhotoRole(row["role"] or brought_as),
        edit=PhotoEdit(row["turns"], crop),
        is_printed=row["is_printed"],
        is_removed=row["is_removed"],
        place=row["place"],
    )


def _keep(connection: Connection, object_number: str, shown: ShownPhoto) -> None:
    (key,) = load_keys(connection, objects, "object_number", [object_number]).values()
    is_this = and_(photo_edits.c.object_id == key, photo_edits.c.sha256 == shown.sha256)
    connection.execute(delete(photo_edits).where(is_this))
    crop = shown.edit.crop
    connection.execute(
        insert(photo_edits).values(
            object_id=key,
            sha256=shown.sha256,
            turns=shown.edit.turns,
            crop=dump_json(list(crop.ratios)) if crop else "",
            role="" if shown.role is shown.brought_as else shown.role.value,
            place=shown.place,
            is_printed=shown.is_printed,
            is_removed=shown.is_removed,
        )
    )


def _tell(object_number: str, was: ShownPhoto, now: ShownPhoto) -> Iterator[Entry]:
    """Say in words what becomes of a photo."""
    turned = (was.edit.turns, now.edit.turns)
    cropped = (_ratios(was), _ratios(now))
    said = (
        ("photo turned", turned),
        ("photo cropped" if now.edit.crop else "photo shown whole again", cropped),
        (f"photo is {now.role.value}", (was.role.value, now.role.value)),
        (
            "photo printed again" if now.is_printed else "photo kept off cards",
            (was.is_printed, now.is_printed),
        ),
        (
            "photo removed" if now.is_removed else "photo put back",
            (was.is_removed, now.is_removed),
        ),
    )
    for verb, (before, after) in said:
        if before != after:
            named = {"file": was.file, "sha256": was.sha256, "before": before, "after": after}
            yield Entry(verb, object_number=object_number, detail=dump_json(named))


def _ratios(shown: ShownPhoto) -> list[float] | None:
    return list(shown.edit.crop.ratios) if shown.edit.crop else None
