from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.compose.cover_card import compose_cover_card
from service.contents.packing import Packing
from service.records.record import ObjectRecord, PhotoReference, PhotoRole
from tests.contents.made import GARMENT_COVER, MUSEUM, hazard, objects, packing

DRESS = ObjectRecord(
    "1962.18",
    title="Day dress, printed cotton",
    object_name="dress",
    period="1840s",
    accessories=("Belt",),
    materials=("cotton", "linen"),
    condition="Hem frayed",
    handling_notes="Two people",
    photos=(PhotoReference("front.jpg"), PhotoReference("back.jpg", PhotoRole.BACK)),
)


def hung(record: ObjectRecord) -> Packing:
    """Put a garment into its cover."""
    return packing([record, *objects(1)], GARMENT_COVER)


def test_the_first_object_is_the_garment() -> None:
    """What else lies in the cover is named beside it; notes and accessories are the garment's."""
    card = compose_cover_card(hung(DRESS), MUSEUM)
    assert (card.main.object_number, card.object_name, card.period) == ("1962.18", "dress", "1840s")
    assert [item.object_number for item in card.others] == ["1987.412.1"]
    assert card.notes == ("Materials: cotton, linen", "Condition: Hem frayed", "Two people")
    assert (card.accessories, card.back_photo) == (("Belt",), "back.jpg")
    assert card.head.query == f"r=3&k={card.head.check_letters}"


@pytest.mark.parametrize(
    ("fields", "notes"),
    [
        ({}, ()),
        ({"materials": ("silk",)}, ("Materials: silk",)),
        ({"condition": "Hem frayed"}, ("Condition: Hem frayed",)),
        ({"handling_notes": "Two people"}, ("Two people",)),
    ],
    ids=["none", "materials", "condition", "handling"],
)
def test_only_notes_that_say_something_are_printed(
    fields: dict[str, object], notes: tuple[str, ...]
) -> None:
    """No heading stands alone."""
    record = replace(ObjectRecord("1962.18"), **fields)  # type: ignore[arg-type] # any field
    assert compose_cover_card(hung(record), MUSEUM).notes == notes


def test_a_part_elsewhere_is_named_before_the_notes() -> None:
    """Nobody looks for a belt that lies in another box."""
    made = hung(DRESS)
    first = replace(made.contents[0], elsewhere=((("belt",), "B-7"),))
    layer = replace(made.layers[0], contents=(first,))
    card = compose_cover_card(replace(made, layers=(layer,)), MUSEUM)
    assert card.accessories == ("Belt",)
    assert card.notes[0] == "Belt in B-7"


@pytest.mark.parametrize("secret", [{"restricted": True}, {"hazards": (hazard("firearm"),)}])
def test_a_discreet_garment_shows_its_number_alone(secret: dict[str, bool]) -> None:
    """Nothing that tells what it is stands outside."""
    card = compose_cover_card(hung(replace(DRESS, **secret)), MUSEUM)  # type: ignore[arg-type] # either field
    assert not any((card.object_name, card.period, card.back_photo, card.main.photo))
    assert (card.accessories, card.notes) == ((), ())
    assert "dress" not in card.main.title.lower()


@pytest.mark.parametrize(
    ("changes", "words", "reason"),
    [
        ({}, "No advice recorded: ask before hanging", ""),
        ({"cautions": ("do-not-hang",)}, "Do not hang, lay flat in a box", "do not hang"),
        (
            {"hang_factors": ("sound-shoulders",)},
            "Hang on a padded hanger: support the hem",
            "sound shoulders",
        ),
        (
            {"hang_factors": ("beads", "thin-straps")},
            "Do not hang, lay flat in a box",
            "beads, thin straps",
        ),
        (
            {"hang_factors": ("beads",), "restricted": True},
            "Do not hang, lay flat in a box",
            "",
        ),
    ],
    ids=["silent", "forbidden", "sound", "two reasons", "discreet"],
)
def test_advice_on_hanging_gives_its_reason(
    changes: dict[str, object], words: str, reason: str
) -> None:
    """A silent record gives no leave to hang, and the reasons of a discreet one stay inside."""
    card = compose_cover_card(hung(replace(DRESS, **changes)), MUSEUM)  # type: ignore[arg-type] # any field
    assert (card.hang_advice, card.hang_reason) == (words, reason)


def test_what_must_lie_flat_decides_for_the_whole_cover() -> None:
    """A knitted jersey beside the coat is not overlooked, and the coat not taken for it."""
    coat = replace(DRESS, hang_factors=("sound-shoulders",))
    jersey = ObjectRecord("1962.19", hang_factors=("knit",))
    card = compose_cover_card(packing([coat, jersey], GARMENT_COVER), MUSEUM)
    assert card.hang_advice == "1962.19: do not hang, lay flat in a box"
    assert card.hang_reason == "knitted"


def test_a_detail_stands_in_for_the_back() -> None:
    """Without a photo of the back a detail is shown."""
    photos = (PhotoReference("front.jpg"), PhotoReference("hem.jpg", PhotoRole.DETAIL))
    assert compose_cover_card(hung(replace(DRESS, photos=photos)), MUSEUM).back_photo == "hem.jpg"


def test_hazards_of_a_cover_name_every_object() -> None:
    """No marks stand beside the other objects of a cover, so its hazards name them all."""
    records = [replace(one, hazards=(hazard("lead"),)) for one in objects(6)]
    card = compose_cover_card(packing(records, GARMENT_COVER), MUSEUM)
    (warn,) = card.handling.hazards
    assert len(warn.unmarked) == len(warn.pointers) == 6
