from __future__ import annotations

import pytest

from service.contents.packing import Packing
from service.records.record import Hazard, HazardState, Part, PlaceRecord
from tests.handling.packing.made import BOX, COVER, at, found, noticed, pack, thing

HAT = thing(
    "1",
    "straw",
    "silk",
    object_name="hat",
    parts=(Part("a", "hat"), Part("b", "sash")),
    hazards=(Hazard("sharps", HazardState.CONFIRMED, "two steel pins through the hat (part a)"),),
)


@pytest.mark.parametrize(
    ("record", "expected"),
    [
        (thing("1", "cotton", condition="Sound; two pins in the hem"), True),
        (thing("1", "cotton", condition="Pins removed"), False),
        (thing("1", "cotton", condition="No pins"), False),
        (thing("1", "cotton", condition="Pinched at the waist"), False),
        (thing("1", "cotton", handling_notes="Old staples at the label"), True),
        (thing("1", "steel", condition="Five pins"), False),
        (thing("1", condition="Two pins"), False),
        (thing("1", object_name="sampler", condition="Rusty drawing pins"), True),
        (thing("1", "cotton", parts=(Part("a", "cap with pins"),)), True),
        (thing("1", "cotton", parts=(Part("a", "pin case"),)), False),
    ],
)
def test_pins_in_textiles(record: object, *, expected: bool) -> None:
    """Pins that the record finds in a textile are reported, those it denies are not."""
    codes = found(pack(record))  # type: ignore[arg-type] # an object
    assert codes == ([("pins-in-textile", "1")] if expected else [])


@pytest.mark.parametrize(("parts", "expected"), [(("a",), 1), (("b",), 0), ((), 1)])
def test_pins_of_a_part_are_where_it_lies(parts: tuple[str, ...], expected: int) -> None:
    """The hat is in one box and the sash in another: only one of them has pins."""
    hat = thing("1", "silk", parts=HAT.parts, hazards=HAT.hazards)
    assert len(found(pack((hat, PlaceRecord("1", parts))))) == expected


@pytest.mark.parametrize(
    ("made", "expected"),
    [
        (pack(thing("1", "wool", "steel", condition="Rust at the neck hook")), True),
        (pack(thing("1", "wool", "steel", condition="No rust")), False),
        (pack(thing("1", "wool", "steel", condition="Rust at the hook, hook in tissue")), True),
        (pack(thing("1", "wool", "steel", condition="Rusty hook isolated by cotton")), False),
        (pack(thing("1", "wool", condition="Rust red, faded")), False),
        (
            pack(
                at(thing("1", "linen"), compartment="A1"), at(thing("2", "iron"), compartment="A1")
            ),
            True,
        ),
        (
            pack(
                at(thing("1", "linen"), compartment="A1"), at(thing("2", "iron"), compartment="A2")
            ),
            False,
        ),
        (
            pack(
                at(thing("1", "linen"), compartment="A1"),
                at(thing("2", "iron"), compartment="A1", note="in a bag"),
            ),
            False,
        ),
        (pack(thing("1", "linen"), thing("2", "iron")), False),
    ],
    ids=[
        "rust",
        "no rust",
        "only the hook in tissue",
        "isolated",
        "no metal",
        "in one compartment",
        "in two",
        "in a bag",
        "no compartments",
    ],
)
def test_metal_against_cloth(made: Packing, *, expected: bool) -> None:
    """Corroding metal on cloth, or metal in its compartment with nothing between, is reported."""
    assert found(made) == ([("metal-against-textile", "1")] if expected else [])


@pytest.mark.parametrize(
    ("note", "cautions", "code"),
    [
        ("folded in four", (), "unpadded-fold"),
        ("left; folded in four, unpadded", (), "unpadded-fold"),
        ("folded, not padded", (), "unpadded-fold"),
        ("folded over tissue rolls", (), ""),
        ("each fold padded", (), ""),
        ("not folded", (), ""),
        ("lies flat", (), ""),
        ("", (), ""),
        ("each fold padded", ("do-not-fold",), "folded-against-record"),
        ("folded once", ("keep-flat",), "folded-against-record"),
        ("unfolded", ("do-not-fold",), ""),
    ],
)
def test_folds(note: str, cautions: tuple[str, ...], code: str) -> None:
    """An unpadded fold is reported, not a fold; where none is allowed, any fold is."""
    made = pack(at(thing("1", "silk", cautions=cautions), note=note))
    assert found(made) == ([(code, "1")] if code else [])


def test_paper_may_be_folded() -> None:
    """The rule is one of textiles: a folded letter is none of its business."""
    assert found(pack(at(thing("1", "paper"), note="folded once"))) == []


def test_hung_against_its_record() -> None:
    """What must lie flat and hangs in a cover is reported with every reason; in a box it is not."""
    bodice = thing("1", "silk", hang_factors=("beads",), cautions=("do-not-hang",))
    (finding,) = noticed(pack(bodice, container=COVER))
    assert (finding.code, finding.severity.value) == ("hung-against-advice", "warning")
    assert finding.message == (
        "1 hangs in its cover; recorded: do not hang, beads."
        " What the record forbids is not advised by any other rule."
        " What is beaded or heavily decorated is stored flat."
    )
    assert finding.advice.endswith(
        "(Rule hang-recorded: common practice, no source; flat-beads: CCI Notes 13/5 and 13/2.)"
    )
    assert found(pack(bodice, container=BOX)) == []


def test_what_may_hang_or_is_not_known_is_no_finding() -> None:
    """A silent record contradicts nothing, and a hanging garment may lie in a box."""
    sound = thing("1", "cotton", hang_factors=("sound-shoulders",))
    for made in (pack(sound, container=COVER), pack(sound), pack(thing("1"), container=COVER)):
        assert found(made) == []


@pytest.mark.parametrize(
    "pins", ["pin", "pins", "staple", "staples", "paper clip", "paper clips", "tacks"]
)
def test_pins_of_every_kind(pins: str) -> None:
    """CCI Notes 13/5: pins and staples go; the other words for such things have no source."""
    assert found(pack(thing("1", "cotton", condition=f"Old {pins} in the hem")))
    assert not found(pack(thing("1", "cotton", condition=f"Remove the {pins}")))
    assert not found(pack(thing("1", "cotton", parts=(Part("a", f"{pins} cushion"),))))
    assert not found(pack(thing("1", "cotton", parts=(Part("a", f"{pins} case"),))))


def test_pins_of_a_part_by_its_name() -> None:
    """Of the parts only those that lie here are looked at."""
    parts = (Part("a", "cap"), Part("b", "veil with pins"))
    for here, expected in (((), 1), (("b",), 1), (("a",), 0)):
        lying = (thing("1", "silk", parts=parts), PlaceRecord("1", here))
        assert len(found(pack(lying))) == expected


@pytest.mark.parametrize(
    "word", ["corroded", "corroding", "corrosion", "rust", "rusty", "rusting", "verdigris"]
)
def test_corrosion_in_any_words(word: str) -> None:
    """It is told of cloth with metal on it, unless something lies between (CCI Notes 13/5).

    The words for it are common practice, no source.
    """
    sick = thing("1", "cotton", "iron", condition=f"Hooks {word}")
    assert found(pack(sick)) == [("metal-against-textile", "1")]
    assert not found(pack(thing("1", "cotton", condition=f"Hooks {word}")))
    assert not found(pack(thing("1", "cotton", "iron", condition=f"Hooks {word} under tissue")))


@pytest.mark.parametrize(
    "between",
    [
        *("tissue", "bag", "bagged", "box", "boxed", "sleeve", "wrapped", "foam", "interleaved"),
        *("isolated", "case", "polyester", "polyethylene"),
    ],
)
@pytest.mark.parametrize("metal", ["silver", "copper alloy", "lead", "pewter", "iron"])
def test_metal_beside_cloth_has_something_between(between: str, metal: str) -> None:
    """A note on either of the two says that they do not touch (common practice, no source)."""
    cloth, bob = thing("1", "cotton"), thing("2", metal)
    assert found(pack(at(cloth, compartment="A1"), at(bob, compartment="A1")))
    noted = pack(at(cloth, compartment="A1", note=f"with {between}"), at(bob, compartment="A1"))
    assert not found(noted)


@pytest.mark.parametrize("fold", ["folded", "one fold", "two folds"])
@pytest.mark.parametrize(
    "padding",
    ["padded", "padding", "tissue", "a roll", "rolls", "rolled", "wadding", "interleaved"],
)
def test_padding_in_any_words(fold: str, padding: str) -> None:
    """CCI Notes 13/2: each fold is padded; the words for it are common practice, no source."""
    cloth = thing("1", "cotton")
    assert not found(pack(at(cloth, note=f"{fold} with {padding}")))
    assert found(pack(at(cloth, note=fold))) == [("unpadded-fold", "1")]


@pytest.mark.parametrize(
    "note",
    [
        "folded with tissue but unpadded",
        "folded without padding",
        "folded not padded",
        "folded no padding",
    ],
)
def test_a_fold_that_is_said_to_be_unpadded(note: str) -> None:
    """What denies the padding does not deny the fold."""
    assert found(pack(at(thing("1", "cotton"), note=note))) == [("unpadded-fold", "1")]


@pytest.mark.parametrize(
    ("made", "says"),
    [
        (
            pack(thing("1", "cotton", condition="Sound; two pins in the hem")),
            "1 is of cloth, and its record says: two pins in the hem.",
        ),
        (
            pack(thing("1", "wool", "steel", condition="Sound; rust at the hook")),
            "1 is of cloth, and its condition says: rust at the hook.",
        ),
        (
            pack(
                at(thing("1", "linen"), compartment="A1"),
                at(thing("2", "iron"), compartment="A1"),
                at(thing("3", "lead"), compartment="A1"),
            ),
            "1 lies with 2 and 3 of metal in A1.",
        ),
        (
            pack(at(thing("1", "silk"), note="folded in four")),
            "1 is noted as lying so: folded in four.",
        ),
        (
            pack(at(thing("1", "silk", cautions=("keep-flat",)), note="folded once")),
            "1 is noted as lying so: folded once.",
        ),
    ],
    ids=["pins", "rust", "metal beside", "fold", "fold against the record"],
)
def test_a_finding_says_what_and_where(made: Packing, says: str) -> None:
    """It names the object, and what its record or note says of it in its own words."""
    (finding,) = noticed(made)
    assert finding.message.startswith(says)
    assert str(finding.where) == "B-1, 1"


def test_cloth_with_metal_on_it_is_cloth() -> None:
    """The main material decides what a thing is: a hook does not make a coat of metal."""
    coat = thing("1", "wool", "steel")
    bodice = thing("2", "silk")
    assert not found(pack(at(coat, compartment="A1"), at(bodice, compartment="A1")))


def test_one_that_is_no_cloth_ends_no_search() -> None:
    """What comes after it is looked at as well; the finding of a cover names its object."""
    pinned = thing("2", "cotton", condition="Pins at the hem")
    assert found(pack(thing("1", "iron"), pinned)) == [("pins-in-textile", "2")]
    bodice = thing("1", "silk", cautions=("do-not-hang",))
    assert found(pack(bodice, container=COVER)) == [("hung-against-advice", "1")]
