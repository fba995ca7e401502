"""The records: object, container, packing and museum, as the files state them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum

from service.findings import Finding
from service.geometry import Size
from service.records.measures import Grid, Measure
from service.records.museum.check_months import CheckMonths
from service.records.museum.hazard_words import HazardWords
from service.records.museum.language import Language
from service.records.museum.lifting import USUAL_LIFTING, LiftingChoices
from service.records.museum.region import Region


class HazardState(StrEnum):
    """How much is known of a hazard; there is no state that says a thing does no harm."""

    CONFIRMED = "confirmed"
    PRESUMED = "presumed"
    UNCHECKED = "unchecked"


class WeightBasis(StrEnum):
    """Where a weight comes from."""

    MEASURED = "measured"
    ESTIMATED = "estimated"


class PhotoRole(StrEnum):
    """Which side of the object a photo shows."""

    FRONT = "front"
    BACK = "back"
    DETAIL = "detail"


class ContainerKind(StrEnum):
    """The kinds of container that get cards."""

    BOX = "box"
    GARMENT_COVER = "garment cover"
    TUBE = "tube"
    DRAWER = "drawer"
    FOLDER = "folder"


class Lid(StrEnum):
    """What can be fixed on top: nothing may cover the view through a clear lid."""

    OPAQUE = "opaque"
    CLEAR = "clear"
    NONE = "none"


@dataclass(frozen=True, slots=True)
class Hazard:
    """One recorded hazard; `code` is kept as written when it is not in the list.

    `instruction` is what the museum prints as first precaution, "" for the usual words.
    """

    code: str
    state: HazardState
    note: str = ""
    method: str = ""
    checked_on: date | None = None
    checked_by: str = ""
    review_on: date | None = None
    instruction: str = ""


@dataclass(frozen=True, slots=True)
class Weight:
    """A known weight in grams and where it comes from."""

    weight_g: float
    basis: WeightBasis = WeightBasis.MEASURED


@dataclass(frozen=True, slots=True)
class PhotoReference:
    """A photo named by a record; the first front photo is the one a card shows."""

    file: str
    role: PhotoRole = PhotoRole.FRONT


@dataclass(frozen=True, slots=True)
class Part:
    """A part of an object: the mark that follows the number ("a") and its name."""

    mark: str
    name: str = ""


@dataclass(frozen=True, slots=True)
class ObjectRecord:
    """One object as the catalogue describes it.

    `object_number` is an opaque string. `dimensions_text` and `weight_text` keep what was written;
    `dimensions` and `weight` what was understood. `source` is the row as it came.
    """

    object_number: str
    title: str = ""
    object_name: str = ""
    period: str = ""
    number_of_parts: int | None = None
    parts: tuple[Part, ...] = ()
    accessories: tuple[str, ...] = ()
    materials: tuple[str, ...] = ()
    dimensions: tuple[Measure, ...] = ()
    dimensions_text: str = ""
    weight: Weight | None = None
    weight_text: str = ""
    condition: str = ""
    handling_notes: str = ""
    hazards: tuple[Hazard, ...] = ()
    cautions: tuple[str, ...] = ()
    hang_factors: tuple[str, ...] = ()
    former_numbers: tuple[str, ...] = ()
    photos: tuple[PhotoReference, ...] = ()
    catalogue_url: str = ""
    restricted: bool = False
    source: Mapping[str, str] = field(default_factory=dict, compare=False, hash=False)


@dataclass(frozen=True, slots=True)
class Questions:
    """Whom to ask: a role first, then a telephone number, then perhaps a person."""

    role: str = ""
    phone: str = ""
    person: str = ""


@dataclass(frozen=True, slots=True)
class ContainerRecord:
    """One container as the store describes it; sizes are width x height in mm.

    `lid_size` is measured as one stands at the end label, `end_size` is the short side that faces
    the aisle. `hand_height_mm` is the height of shelf or rail above the floor. `inside` is the
    number of the container this one lies in. `weight_limit_g` is the most it may weigh when full.
    """

    container_number: str
    kind: ContainerKind = ContainerKind.BOX
    title: str = ""
    location: tuple[str, ...] = ()
    lid: Lid = Lid.OPAQUE
    lid_size: Size | None = None
    end_size: Size | None = None
    inner_dimensions: tuple[Measure, ...] = ()
    compartments: Grid | None = None
    tare: Weight | None = None
    gross: Weight | None = None
    packing_materials: tuple[str, ...] = ()
    hand_height_mm: float | None = None
    inside: str = ""
    stacking_limit: int | None = None
    weight_limit_g: float | None = None
    heavy_end: str = ""
    temporary_until: date | None = None
    questions: Questions = Questions()
    handling_notes: str = ""
    source: Mapping[str, str] = field(default_factory=dict, compare=False, hash=False)


@dataclass(frozen=True, slots=True)
class PlaceRecord:
    """Where one object, or named parts of it, lies: layer 1 is the top one."""

    object_number: str
    parts: tuple[str, ...] = ()
    layer: int = 1
    compartment: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class PackingRecord:
    """One numbered state of a container's contents: who, when and why."""

    container_number: str
    revision: int = 1
    places: tuple[PlaceRecord, ...] = ()
    packed_by: str = ""
    packed_on: date | None = None
    reason: str = ""


@dataclass(frozen=True, slots=True)
class Museum:
    """The museum's own choices that a card shows or obeys.

    An address pattern holds `{object_number}` or `{container_number}`; empty means that cards
    carry the bare number. `presume_hazards` lets the kind and date of an object add hazards that
    published guidance presumes; what is recorded prints in any case. `packing_checks_off` are codes
    of checks that the museum does not want. `scan_shows_contents` and `scan_shows_location` tell
    both to anybody who scans a card.
    """

    name: str = ""
    short_name: str = ""
    object_address: str = ""
    container_address: str = ""
    upper_case_addresses: bool = False
    show_location: bool = False
    aisle_distance_mm: float = 1500.0
    questions: Questions = Questions()
    lifting: LiftingChoices = USUAL_LIFTING
    region: Region = Region.ELSEWHERE
    presume_hazards: bool = True
    second_language: Language = Language.NONE
    hazard_words: tuple[HazardWords, ...] = ()
    checks: CheckMonths = CheckMonths()  # noqa: RUF009 - it is frozen
    packing_checks_off: tuple[str, ...] = ()
    scan_shows_contents: bool = False
    scan_shows_location: bool = False


@dataclass(frozen=True, slots=True)
class Collection:
    """Everything read from one source, in the order it was read, with what was noticed.

    `said_of_objects` and `said_of_containers` name the columns that the source has for a record, by
    its number; one that is not named there is meant whole.
    """

    museum: Museum = Museum()
    objects: tuple[ObjectRecord, ...] = ()
    containers: tuple[ContainerRecord, ...] = ()
    packings: tuple[PackingRecord, ...] = ()
    findings: tuple[Finding, ...] = ()
    said_of_objects: Mapping[str, frozenset[str]] = field(default_factory=dict, compare=False)
    said_of_containers: Mapping[str, frozenset[str]] = field(default_factory=dict, compare=False)
