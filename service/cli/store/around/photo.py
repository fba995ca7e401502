"""The command that says how an object shows its photos."""

from __future__ import annotations

from typing import Annotated

import typer

from service.cli.at_desk import By, Json, answer, at_desk
from service.errors import NotFoundError
from service.keeping.desk import Desk
from service.keeping.photos.shown import WHOLE, PhotoChange, Ratios, change_photo
from service.records.record import PhotoRole
from service.store.history import Stamp
from service.store.open import reading, writing
from service.store.shelf.shown import ShownPhoto, load_shown_of, order_photos

app = typer.Typer()

_DEGREES_A_TURN = 90


@app.command("photo")
def photo(
    context: typer.Context,
    object_number: Annotated[str, typer.Argument(help="The number of the object.")],
    number: Annotated[
        int, typer.Option("--photo", help="Which of its photos, counted as they are listed.")
    ] = 1,
    turn: Annotated[
        int | None, typer.Option(help="Degrees clockwise from how it came: 0, 90, 180 or 270.")
    ] = None,
    crop: Annotated[
        str, typer.Option(help="Left,top,right,bottom in shares of the upright photo; or whole.")
    ] = "",
    role: Annotated[PhotoRole | None, typer.Option(help="What it shows.")] = None,
    printed: Annotated[
        bool | None, typer.Option("--printed/--not-printed", help="Whether cards show it.")
    ] = None,
    removed: Annotated[
        bool | None, typer.Option("--remove/--put-back", help="Its file stays in any case.")
    ] = None,
    order: Annotated[str, typer.Option(help="The photos as wanted, such as 2,1,3.")] = "",
    by: By = "",
    as_json: Json = False,
) -> None:
    """Turn, crop or order the photos of an object, or keep one off cards; alone it lists them."""
    change = PhotoChange(_read_turns(turn), _read_crop(crop), role, printed, removed)
    at = at_desk(context)
    with at.desk() as desk:
        if change != PhotoChange():
            one = _find(desk, object_number, number)
            change_photo(desk, object_number, one.sha256, change, stamp=at.stamp(by))
        if order:
            _put_in_order(desk, object_number, order, at.stamp(by))
        with reading(desk.engine) as connection:
            shown = load_shown_of(connection, object_number)
    data = {"object_number": object_number, "photos": [_data(one) for one in shown]}
    lines = [_line(count, one) for count, one in enumerate(shown, start=1)]
    answer(data, lines or ["No photo was brought for it."], as_json=as_json)


def _find(desk: Desk, object_number: str, number: int) -> ShownPhoto:
    """Give the photo of a number.

    Raises:
        NotFoundError: When the object has no such photo.
    """
    with reading(desk.engine) as connection:
        shown = load_shown_of(connection, object_number)
    if not 1 <= number <= len(shown):
        raise NotFoundError(str(number), what=f"photo of {object_number}")
    return shown[number - 1]


def _put_in_order(desk: Desk, object_number: str, order: str, stamp: Stamp) -> None:
    """Put photos in the order of their numbers.

    Raises:
        BadParameter: When it is not written as numbers with commas between.
    """
    try:
        numbers = [int(part) for part in order.split(",")]
    except ValueError as error:
        message = "write the numbers of the photos with commas between, such as 2,1,3"
        raise typer.BadParameter(message) from error
    wanted = [_find(desk, object_number, number).sha256 for number in numbers]
    with writing(desk.engine) as connection:
        order_photos(connection, object_number, wanted, stamp=stamp)


def _read_turns(turn: int | None) -> int | None:
    """Read degrees.

    Raises:
        BadParameter: When they are no quarter turns.
    """
    if turn is not None and turn % _DEGREES_A_TURN:
        message = "a photo is turned by 0, 90, 180 or 270 degrees"
        raise typer.BadParameter(message)
    return None if turn is None else turn // _DEGREES_A_TURN % 4


def _read_crop(text: str) -> Ratios | None:
    """Read four shares.

    Raises:
        BadParameter: When there are not four numbers.
    """
    if not text:
        return None
    if text == "whole":
        return WHOLE
    try:
        left, top, right, bottom = map(float, text.split(","))
    except ValueError as error:
        message = "write left,top,right,bottom between 0 and 1, such as 0.1,0.2,0.9,1"
        raise typer.BadParameter(message) from error
    return left, top, right, bottom


def _data(one: ShownPhoto) -> dict[str, object]:
    return {
        "sha256": one.sha256,
        "file": one.file,
        "role": one.role.value,
        "turned_deg": one.edit.turns * _DEGREES_A_TURN,
        "crop": one.edit.crop.ratios if one.edit.crop else None,
        "is_printed": one.is_printed,
        "is_removed": one.is_removed,
    }


def _line(number: int, one: ShownPhoto) -> str:
    crop = one.edit.crop
    said = (
        one.role.value,
        f"turned by {one.edit.turns * _DEGREES_A_TURN} degrees" if one.edit.turns else "",
        f"cropped to {', '.join(f'{ratio:g}' for ratio in crop.ratios)}" if crop else "",
        "" if one.is_printed else "not printed",
        "removed" if one.is_removed else "",
    )
    return f"{number}  {one.file}  {', '.join(filter(None, said))}"
