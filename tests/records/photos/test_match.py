"""Tests for matching photos by their names: what people write, and what must not be guessed."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.records.photos.match import match_photos
from service.records.record import Collection, Museum, ObjectRecord, Part, PhotoReference, PhotoRole

FRONT, BACK, DETAIL = PhotoRole.FRONT, PhotoRole.BACK, PhotoRole.DETAIL


def collect(*numbers: str) -> Collection:
    """Give a collection of bare objects."""
    return Collection(objects=tuple(ObjectRecord(number) for number in numbers))


def owner(name: str, *numbers: str) -> str:
    """Say whose photo a file is: an object number, "?" for more than one, "" for none."""
    matches = match_photos([name], collect(*numbers))
    if matches.ambiguous:
        return "?"
    return next(iter(matches.photos), "")


@pytest.mark.parametrize(
    ("name", "number"),
    [
        ("1987.412.3.jpg", "1987.412.3"),
        ("1987.412.3_1.jpg", "1987.412.3"),
        ("1987-412-3 back.JPG", "1987.412.3"),
        ("1987_412_3b (2).heic", "1987.412.3"),
        ("1987.412.3 front.jpeg", "1987.412.3"),
        ("1987.412.3front.jpeg", "1987.412.3"),
        ("PMM.77.3-detail-02.jpg", "PMM.77.3"),
        ("pmm77.3.jpg", "PMM.77.3"),
        ("IMG_1987.412.3.jpg", "1987.412.3"),
        ("IMG1987.412.3.jpg", "1987.412.3"),
        ("IMG_0042_1987.412.3.jpg", "1987.412.3"),
        ("2026-10-14_1987.412.3.jpg", "1987.412.3"),
        ("1931-14-7.tif", "1931/14/7"),
        ("1931:14:7.tif", "1931/14/7"),
        ("1987 412 3.png", "1987.412.3"),
        ("1987.412.3 - Copy.jpg", "1987.412.3"),
        ("1987.412.3(2).jpg", "1987.412.3"),
        ("1987-412-3_edited.jpg", "1987.412.3"),
        ("1987-412-3-1.jpg", "1987.412.3"),
        ("1987.412.003.jpg", "1987.412.3"),
        ("1987.412.3.jpg", "1987.412.003"),
        ("Marlinspike 1931.14.7.jpg", "1931.14.7"),
        ("marlinspike-1931-14-7.jpg", "1931.14.7"),
        ("1987.412.3.jpg.jpg", "1987.412.3"),
        ("0042.jpg", "42"),
        ("PMM_1987.412.3.jpg", "1987.412.3"),
    ],
)
def test_ways_of_writing_a_number(name: str, number: str) -> None:
    """A file is found under its number however the number is written."""
    assert owner(name, number, "1999.103.2") == number


@pytest.mark.parametrize(
    ("name", "numbers"),
    [
        ("1987.412.30.jpg", ["1987.412.3"]),
        ("1987.412.3.jpg", ["1987.412.30"]),
        ("21987.412.3.jpg", ["1987.412.3"]),
        ("1987.412.3.1.jpg", ["1987.412.3"]),
        ("1987.412.3b.jpg", ["1987.412.3", "1987.412.3a"]),
        ("1987.412.3bis.jpg", ["1987.412.3"]),
        ("1987-412-3.jpg", ["412.3"]),
        ("1987_412.3.jpg", ["412.3"]),
        ("PMM.77.3.jpg", ["77.3"]),
        ("PMM-77.3.jpg", ["77.3"]),
        ("L2019.4.jpg", ["2019.4"]),
        ("1987-412-3.jpg", ["1987.412", "1999.103.2", "1999.103.4"]),
        ("1987-412-3.jpg", ["1987.412", "1987.412.9"]),
        ("IMG_0042.jpg", ["42"]),
        ("2026-03-04.jpg", ["2026.3.4"]),
        ("._1987.412.3.jpg", ["1987.412.3"]),
        ("1987.412.3.xmp", ["1987.412.3"]),
        ("1987.412.3.jpg" + " " * 300 + ".jpg", ["1987.412.3"]),
        ("jar.jpg", ["???", ""]),
        ("", ["1987.412.3"]),
    ],
)
def test_what_is_not_guessed(name: str, numbers: list[str]) -> None:
    """A number that may be half of another, or a date or a counter, matches nothing."""
    assert owner(name, *numbers) == ""


@pytest.mark.parametrize(
    ("name", "numbers", "expected"),
    [
        ("1987.412.3.jpg", ["1987.412", "1987.412.3", "412.3"], "1987.412.3"),
        ("1987.412.30.jpg", ["1987.412.3", "1987.412.30"], "1987.412.30"),
        ("1987.412.3b.jpg", ["1987.412.3", "1987.412.3b"], "1987.412.3b"),
        ("1987-412-3-b.jpg", ["1987.412.3", "1987.412.3b"], "1987.412.3b"),
        ("1987-412-3-2.jpg", ["1987.412.3", "1987.412.3.2"], "1987.412.3.2"),
        ("1987.412.3 (2).jpg", ["1987.412.3", "1987.412.3.2"], "1987.412.3"),
        ("PMM.77.3.jpg", ["77.3", "PMM.77.3"], "PMM.77.3"),
        ("1987.412-3.jpg", ["1987.412", "1987.412-3"], "1987.412-3"),
        ("1987.412.3.jpg", ["1987.412.3", "1987.412.03"], "1987.412.3"),
        ("1987.412.jpg", ["1987/412", "1987.412"], "1987.412"),
        ("1987.412.10A.jpg", ["1987.412.10A", "1987.412.10a"], "1987.412.10A"),
    ],
)
def test_the_longest_and_closest_wins(name: str, numbers: list[str], expected: str) -> None:
    """The longest number at a boundary is meant, and of equals the one written just so."""
    assert owner(name, *numbers) == expected
    assert owner(name, *reversed(numbers)) == expected


@pytest.mark.parametrize(
    ("name", "numbers"),
    [
        ("1987-412.jpg", ["1987/412", "1987.412"]),
        ("1987.412.003.jpg", ["1987.412.3", "1987.412.03"]),
        ("1987.412.3 and 1987.412.4.jpg", ["1987.412.3", "1987.412.4"]),
        ("1987.412.3_2.jpg", ["1987.412.3", "1987.412.3.2"]),
        ("1987.412.3_b.jpg", ["1987.412.3", "1987.412.3b"]),
    ],
)
def test_two_readings_are_reported(name: str, numbers: list[str]) -> None:
    """A file that fits two objects equally goes to neither, and both are named."""
    matches = match_photos([name], collect(*numbers))
    assert matches.photos == {}
    ((told, fits),) = matches.ambiguous
    assert (told, set(fits)) == (name, set(numbers))


def test_parts_belong_to_their_object() -> None:
    """Marks of parts and ranges behind a number lead to the object; a strange mark does not."""
    lead = ObjectRecord("1931.14.2a-c")
    dress = ObjectRecord("1978.55.1", parts=(Part("a"), Part("2"), Part("", "sash")))
    names = ["1931.14.2_front.jpg", "1931.14.2b.jpg", "1931.14.2d.jpg", "1978.55.1a.jpg"]
    names += ["1978.55.1.2.jpg", "1978.55.1b.jpg", "1931-14-2a-c back.jpg"]
    photos = match_photos(names, Collection(objects=(lead, dress))).photos
    assert photos == {
        "1931.14.2a-c": (
            PhotoReference("1931.14.2_front.jpg", FRONT),
            PhotoReference("1931.14.2b.jpg", DETAIL),
            PhotoReference("1931-14-2a-c back.jpg", BACK),
        ),
        "1978.55.1": (
            PhotoReference("1978.55.1.2.jpg", FRONT),
            PhotoReference("1978.55.1a.jpg", DETAIL),
        ),
    }


def test_a_whole_number_beats_a_part() -> None:
    """Where an object has the number of another's part, the photo shows that object."""
    objects = (ObjectRecord("1.2.3", parts=(Part("a"),)), ObjectRecord("1.2.3a"))
    photos = match_photos(["1.2.3a.jpg"], Collection(objects=objects)).photos
    assert list(photos) == ["1.2.3a"]


def test_fronts_come_first_then_natural_order() -> None:
    """The front leads, the rest follow as people count."""
    names = ["7.1.2 10.jpg", "7.1.2 9.jpg", "7.1.2 back.jpg", "7-1-2 front.jpg", "detail 7.1.2.jpg"]
    (photos,) = match_photos(names, collect("7.1.2")).photos.values()
    assert [(photo.file, photo.role) for photo in photos] == [
        ("7-1-2 front.jpg", FRONT),
        ("detail 7.1.2.jpg", DETAIL),
        ("7.1.2 9.jpg", DETAIL),
        ("7.1.2 10.jpg", DETAIL),
        ("7.1.2 back.jpg", BACK),
    ]


def test_without_a_front_the_first_is_one() -> None:
    """Where no name says front, the first that says nothing is taken for it."""
    names = ["7.1.2_2.jpg", "7.1.2_1.jpg", "7.1.2 back.jpg"]
    (photos,) = match_photos(names, collect("7.1.2")).photos.values()
    assert [photo.role for photo in photos] == [FRONT, DETAIL, BACK]
    assert photos[0].file == "7.1.2_1.jpg"


def test_a_record_that_names_photos_is_left_alone() -> None:
    """Neither its own photos nor others under its number are given to anybody."""
    own = ObjectRecord("1.2.3", photos=(PhotoReference("1.2.4.jpg"),))
    collection = Collection(objects=(own, ObjectRecord("1.2.4")))
    matches = match_photos(["1.2.4.jpg", "1.2.3 back.jpg", "1.2.4 back.jpg"], collection)
    assert matches.photos == {"1.2.4": (PhotoReference("1.2.4 back.jpg", BACK),)}
    full = Collection(objects=(own,))
    assert match_photos(["1.2.3 back.jpg"], full).photos == {}


def test_no_doubt_where_nobody_could_take_the_photo() -> None:
    """A file that fits two records with photos of their own is merely one nobody names."""
    photos = (PhotoReference("a.jpg"),)
    objects = (ObjectRecord("1.2.3", photos=photos), ObjectRecord("1.2.4", photos=photos))
    collection = Collection(objects=(*objects, ObjectRecord("9.9.9")))
    assert match_photos(["1.2.3 1.2.4.jpg"], collection).ambiguous == ()


def test_the_museums_short_name_may_stand_in_front() -> None:
    """A museum's short name before a number is no part of it."""
    objects = (ObjectRecord("77.3"),)
    collection = Collection(museum=Museum(short_name="PMM"), objects=objects)
    assert list(match_photos(["PMM_77_3.jpg"], collection).photos) == ["77.3"]


_NUMBERS = st.lists(
    st.from_regex(
        r"(?:[A-Zé]{1,3}\.)?[1-9][0-9]{3}(?:\.[1-9][0-9]{0,2}){1,2}[a-c]?", fullmatch=True
    ),
    min_size=1,
    max_size=12,
    unique_by=str.casefold,
)
_SEPARATORS = st.sampled_from(["-", "_", " ", ".", ":", "\u2013"])
_TAILS = st.sampled_from(["", " back", "_1", " (2)", " - Copy", "_edited", "-detail-02", " vorne"])


@given(_NUMBERS, st.data())
def test_order_of_names_never_matters(numbers: list[str], data: st.DataObject) -> None:
    """Any order of the same names gives the same matches, and no file goes to two objects."""
    one = st.builds(
        lambda number, mark, tail: number.replace(".", mark) + tail + ".jpg",
        st.sampled_from(numbers),
        _SEPARATORS,
        _TAILS,
    )
    names = data.draw(st.lists(one, max_size=12))
    collection = collect(*numbers)
    matches = match_photos(names, collection)
    assert match_photos(data.draw(st.permutations(names)), collection) == matches
    given_out = [photo.file for photos in matches.photos.values() for photo in photos]
    given_out += [name for name, _fits in matches.ambiguous]
    assert len(given_out) == len(set(given_out))
    assert set(given_out) <= set(names)


@given(_NUMBERS, _SEPARATORS, st.sampled_from(["NFC", "NFD"]), st.sampled_from("ul"), st.data())
def test_a_number_is_found_in_every_style(
    numbers: list[str], mark: str, form: str, case: str, data: st.DataObject
) -> None:
    """One separator throughout, either Unicode form and either case: the object is found."""
    number = data.draw(st.sampled_from(numbers))
    name = unicodedata.normalize(form, number.replace(".", mark))  # type: ignore[arg-type]
    name = (name.upper() if case == "u" else name.lower()) + ".JPG"
    assert owner(name, *numbers) == number
