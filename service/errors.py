"""Every error the service raises, in one tree.

    ServiceError
      RecordsError
        MissingSourceError
        UnreadableFileError
        MissingColumnsError
        TooManyRecordsError
        UnusableMappingError
        UnusableCropError
      ContentsError
        PlanTooLargeError
        NothingToDoError
      SymbolError
        AddressError
        PayloadTooLongError
        ModuleTooSmallError
      LayoutError
        DoesNotFitError
        UnknownCardKindError
      SheetError
        StockError
        UnknownStockError
        TooManyFilesError
        StartPositionError
        NoFreePositionError
        FaceTooLargeError
        CalibrationError
        UnknownPrinterError
        NoReachError
      RenderError
        TemplateError
        AssetError
        PictureError
        EngineComplaintError
        SlotRefusedError
        ProofFailedError
      StoreError
        NotFoundError
        PackingConflictError
        PackedElsewhereError
        CardStateError
        WrongContainerError
        UnstorableTextError
        DayAheadError
        CursorError
        FileNotStoredError
        FileDamagedError
        BackupError
        PeopleError
          PasswordError
          UserNameError
          UserTakenError
          LastManagerError
          ScopeError
          SignInError
          PairingError
        StoreTooNewError
        StoreBusyError
        StoreFullError
      JobError
        JobTimedOutError
        JobCrashedError
      NotSentError
      ConfigError

Whatever a carer typed is a finding, never an error; an error means that there is nothing left to
print, or that what was printed may not leave the house. Misuse by a programmer is `ValueError` or
`TypeError` and stands outside the tree. HTTP status and exit code belong to the edges.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import date
from typing import ClassVar

from service.sentence import Sentence


class ServiceError(Exception):
    """Root of the tree: what the service says when it cannot go on."""

    code: ClassVar[str] = "service-error"
    advice: ClassVar[str] = "Try again; if it comes back, send the message to whoever runs this."

    def __init__(self, english: str = "", /, **values: object) -> None:
        """Say what happened: a template written out here, and the values in it."""
        super().__init__(Sentence(english, **values))

    @property
    def sentence(self) -> Sentence:
        """Give the message with its template and values, which pages say in other languages."""
        return next((each for each in self.args if isinstance(each, Sentence)), Sentence(str(self)))

    def __reduce__(
        self,
    ) -> tuple[Callable[..., ServiceError], tuple[object, ...], dict[str, object]]:
        """Come back from a child process with the same message and values.

        The standard way calls the class with the message alone, which most classes here refuse.
        """
        return _rebuild, (type(self), *self.args), self.__dict__


def _rebuild(kind: type[ServiceError], *arguments: object) -> ServiceError:
    return kind.__new__(kind, *arguments)


class RecordsError(ServiceError):
    """Raised when the records as a whole cannot be used."""

    code = "records"
    advice = "Check that the file is the export you meant to use."


class MissingSourceError(RecordsError):
    """Raised when a source is not there, or holds nothing that can be read."""

    code = "missing-source"
    advice = "Check the path, or see which files a folder of records holds."

    def __init__(self, name: str, *, reason: str) -> None:
        """Name the source and say what is missing."""
        self.name = name
        self.reason = reason
        super().__init__("{name}: {reason}.", name=name, reason=Sentence(reason))


class UnreadableFileError(RecordsError):
    """Raised by the readers when a file is not in a form they know."""

    code = "unreadable-file"
    advice = "Save the table again as CSV (UTF-8) or XLSX and use that file."

    def __init__(self, name: str, *, tried: str) -> None:
        """Name the file and say what was tried."""
        self.name = name
        self.tried = tried
        super().__init__("{name} cannot be read: {tried}.", name=name, tried=Sentence(tried))


class MissingColumnsError(RecordsError):
    """Raised by the table readers when a column nothing can do without is absent."""

    code = "missing-columns"
    advice = "Add the column, or rename the one that holds it, and use the file again."

    def __init__(self, name: str, *, wanted: Sequence[str], found: Sequence[str]) -> None:
        """Name the file, the columns that are needed and those it has."""
        self.name = name
        self.wanted = tuple(wanted)
        self.found = tuple(found)
        super().__init__(
            "{name} has no column {wanted}; it has: {have}.",
            name=name,
            wanted=", ".join(wanted),
            have=", ".join(found) or Sentence("none"),
        )


class TooManyRecordsError(RecordsError):
    """Raised by the table readers when a table is larger than the limit."""

    code = "too-many-records"
    advice = "Split the file and use the parts one after another."

    def __init__(self, name: str, *, count: int, limit: int) -> None:
        """Name the file, what was counted, and the limit."""
        self.name = name
        self.count = count
        self.limit = limit
        super().__init__(
            "{name} holds {count} or more entries; the limit is {limit}.",
            name=name,
            count=count,
            limit=limit,
        )


class UnusableMappingError(RecordsError):
    """Raised when a mapping of headings cannot be saved, or no table can be read by it."""

    code = "unusable-mapping"
    advice = "Correct the mapping; each sentence names what is wrong with it."

    def __init__(self, name: str, *, reasons: Sequence[str]) -> None:
        """Name the mapping and say everything that is wrong with it."""
        self.name = name
        self.reasons = tuple(reasons)
        super().__init__(
            "The mapping {name!r} cannot be used. {reasons}", name=name, reasons=" ".join(reasons)
        )


class UnusableCropError(RecordsError):
    """Raised when a part of a photo is none, or too small to be shown."""

    code = "unusable-crop"
    advice = "Draw the rectangle larger, within the photo, or show the whole photo."

    def __init__(self, name: str, *, reason: str) -> None:
        """Name the photo and say what is wrong with the part."""
        self.name = name
        self.reason = reason
        super().__init__("{name}: {reason}", name=name, reason=Sentence(reason))


class ContentsError(ServiceError):
    """Raised when no container is left to print."""

    code = "nothing-to-print"
    advice = "Check that the packings name containers and objects that exist in the records."


class PlanTooLargeError(ContentsError):
    """Raised when more is to be shown before printing than anybody looks at."""

    code = "plan-too-large"
    advice = "Look at some containers first, then print all of them without a preview."

    def __init__(self, *, most: int, what: str) -> None:
        """Say how many of what are shown at most."""
        super().__init__(
            "A preview of a print run shows at most {most} {what}.", most=most, what=Sentence(what)
        )


class NothingToDoError(ContentsError):
    """Raised when a paper is asked for that would be empty: nothing is due, out or wrong."""

    code = "nothing-to-do"
    advice = "There is nothing to print today; the records are not at fault."


class SymbolError(ServiceError):
    """Raised when a QR symbol cannot be made as asked."""

    code = "symbol"
    advice = "Shorten the address pattern or give the symbol more room."


class AddressError(SymbolError):
    """Raised by the address pattern when it could not give a lasting https address."""

    code = "address-pattern"
    advice = "Use an https address such as https://collections.example/o/{object_number}."

    def __init__(self, pattern: str, *, reason: str) -> None:
        """Quote the pattern and say what is wrong with it."""
        self.pattern = pattern
        self.reason = reason
        super().__init__(
            "The address pattern {pattern!r} cannot be used: {reason}.",
            pattern=pattern,
            reason=Sentence(reason),
        )


class PayloadTooLongError(SymbolError):
    """Raised when the text is longer than any symbol of the level holds."""

    code = "payload-too-long"

    def __init__(self, *, length: int, limit: int) -> None:
        """Give the length in bytes and the limit."""
        self.length = length
        self.limit = limit
        super().__init__(
            "The QR text is {length} bytes long; at most {limit} fit.", length=length, limit=limit
        )


class ModuleTooSmallError(SymbolError):
    """Raised when the modules of a symbol would be too small to scan in the space given."""

    code = "module-too-small"
    advice = (
        "Use a shorter address pattern, a larger label, or let upper-case addresses be used"
        " if the catalogue accepts them."
    )

    def __init__(self, *, module_mm: float, least_mm: float, needed_mm: float) -> None:
        """Give the module that would fit, the least allowed and the side that would be needed."""
        self.module_mm = module_mm
        self.least_mm = least_mm
        self.needed_mm = needed_mm
        super().__init__(
            "A QR module would be {module_mm:.2f} mm; at least {least_mm:.2f} mm is needed,"
            " that is a symbol {needed_mm:.1f} mm wide with its clear margin.",
            module_mm=module_mm,
            least_mm=least_mm,
            needed_mm=needed_mm,
        )


class LayoutError(ServiceError):
    """Raised when a card cannot be laid out."""

    code = "layout"
    advice = "Choose a larger card."


class DoesNotFitError(LayoutError):
    """Raised by the fit when one block is larger than any page of the card."""

    code = "does-not-fit"

    def __init__(self, block: str, *, needed_mm: float, available_mm: float) -> None:
        """Name the block and give both measures."""
        self.block = block
        self.needed_mm = needed_mm
        self.available_mm = available_mm
        super().__init__(
            "The {block} needs {needed_mm:.1f} mm and the card has {available_mm:.1f} mm.",
            block=block,
            needed_mm=needed_mm,
            available_mm=available_mm,
        )


class UnknownCardKindError(LayoutError):
    """Raised when a card kind is asked for that does not exist."""

    code = "unknown-card-kind"
    advice = "Ask for the list of kinds and choose one of them."

    def __init__(self, kind: str, *, known: Sequence[str]) -> None:
        """Quote the kind and list those that exist."""
        self.kind = kind
        self.known = tuple(known)
        super().__init__(
            "There is no card kind {kind!r}; there are: {known}.", kind=kind, known=", ".join(known)
        )


class SheetError(ServiceError):
    """Raised when pages cannot be put on sheets."""

    code = "sheet"
    advice = "Check the measures of the stock against a real sheet."


class StockError(SheetError):
    """Raised by a stock whose measures contradict each other."""

    code = "impossible-stock"

    def __init__(self, stock: str, *, measure: str, reason: str) -> None:
        """Name the stock, the measure at fault, and why."""
        self.stock = stock
        self.measure = measure
        self.reason = reason
        super().__init__(
            "Stock {stock!r} is impossible: {measure} {reason}.",
            stock=stock,
            measure=measure,
            reason=Sentence(reason),
        )


class UnknownStockError(SheetError):
    """Raised when a stock is asked for that is not defined."""

    code = "unknown-stock"
    advice = "Ask for the list of stocks, or describe your own sheet by its measures."

    def __init__(self, stock: str, *, known: Sequence[str]) -> None:
        """Quote the name and list those that exist."""
        self.stock = stock
        self.known = tuple(known)
        super().__init__(
            "There is no stock {stock!r}; there are: {known}.", stock=stock, known=", ".join(known)
        )


class TooManyFilesError(SheetError):
    """Raised when one file is asked for and the cards need several kinds of sheet."""

    code = "too-many-files"
    advice = "Name a folder for the output, or choose one kind of card and one stock."

    def __init__(self, *, count: int) -> None:
        """Give the number of files."""
        self.count = count
        super().__init__("The cards are {count} files, one for each kind and stock.", count=count)


class StartPositionError(SheetError):
    """Raised by the imposition when the first position is not on the sheet."""

    code = "start-position"
    advice = "Count positions from 1, left to right and top to bottom."

    def __init__(self, position: int, *, positions: int) -> None:
        """Give the position asked for and the number of positions of a sheet."""
        self.position = position
        self.positions = positions
        super().__init__(
            "Position {position} is not on a sheet of {positions} positions.",
            position=position,
            positions=positions,
        )


class NoFreePositionError(SheetError):
    """Raised by the imposition when the first, part-used sheet has no position left."""

    code = "no-free-position"
    advice = "Start on a fresh sheet, at position 1 with no position left out."

    def __init__(self, start_position: int, *, positions: int) -> None:
        """Give the position to start from and the number of positions of a sheet."""
        self.start_position = start_position
        self.positions = positions
        super().__init__(
            "No position from {start_position} to {positions} of the first sheet is free.",
            start_position=start_position,
            positions=positions,
        )


class FaceTooLargeError(SheetError):
    """Raised by the imposition when a face fits its stock neither upright nor turned."""

    code = "face-too-large"
    advice = "Choose a stock with larger positions or a smaller card."

    def __init__(self, face: str, *, face_mm: tuple[float, float], stock: str) -> None:
        """Name the face, its width and height, and the stock."""
        self.face = face
        self.face_mm = face_mm
        self.stock = stock
        width_mm, height_mm = face_mm
        super().__init__(
            "{face} is {width_mm:.1f} x {height_mm:.1f} mm: too large for {stock!r}.",
            face=face,
            width_mm=width_mm,
            height_mm=height_mm,
            stock=stock,
        )


class CalibrationError(SheetError):
    """Raised by the calibration when measurements of a printer cannot be right."""

    code = "calibration"
    advice = (
        "Measure from the left and the top edge of the paper to the middle of each cross, and type"
        " all measurements once more."
    )

    def __init__(self, faults: Sequence[str]) -> None:
        """Keep each fault as a sentence that says which cross and what to do."""
        self.faults = tuple(faults)
        super().__init__("The printer was not corrected: {faults}.", faults=". ".join(faults))


class UnknownPrinterError(SheetError):
    """Raised when a printer or tray is named that was never measured."""

    code = "unknown-printer"
    advice = "See which there are with `calibrate show`, or measure this one with `calibrate`."

    def __init__(self, name: str, *, what: str, known: Sequence[str]) -> None:
        """Quote the name, say what it should be, and list those that are known."""
        self.name = name
        self.what = what
        self.known = tuple(known)
        super().__init__(
            "There is no {what} {name!r}; known: {known}.",
            what=Sentence(what),
            name=name,
            known=", ".join(known) or Sentence("none"),
        )


class NoReachError(SheetError):
    """Raised by the imposition when a printer reaches no free position of a stock."""

    code = "no-reach"
    advice = "Choose a stock with wider margins, or correct the printer's unprintable edges."

    def __init__(self, stock: str) -> None:
        """Name the stock."""
        self.stock = stock
        super().__init__("The printer reaches no free position of {stock!r} wholly.", stock=stock)


class RenderError(ServiceError):
    """Raised when ink cannot be made from a page."""

    code = "render"


class TemplateError(RenderError):
    """Raised when a template asks for what its context does not hold."""

    code = "template"

    def __init__(self, template: str, *, reason: str) -> None:
        """Name the template and say what is wrong."""
        self.template = template
        self.reason = reason
        super().__init__(
            "Template {template} cannot be filled: {reason}.",
            template=template,
            reason=Sentence(reason),
        )


class AssetError(RenderError):
    """Raised by the fetcher when a template asks for anything but our own files."""

    code = "asset-refused"

    def __init__(self, address: str) -> None:
        """Quote the address that was asked for."""
        self.address = address
        super().__init__(
            "A template asked for {address!r}, which is not one of our files.", address=address[:80]
        )


class PictureError(RenderError):
    """Raised by the picture decoder when a photo cannot be used."""

    code = "unusable-photo"
    advice = "Open the photo, save it again as JPEG, and use that file."

    def __init__(self, name: str, *, reason: str) -> None:
        """Name the file and say why it cannot be used."""
        self.name = name
        self.reason = reason
        super().__init__("{name}: {reason}.", name=name, reason=Sentence(reason))


class EngineComplaintError(RenderError):
    """Raised when the layout engine logs anything at all."""

    code = "engine-complaint"

    def __init__(self, messages: Sequence[str]) -> None:
        """Keep every message in order."""
        self.messages = tuple(messages)
        super().__init__("The layout engine complained: {faults}", faults="; ".join(messages))


class SlotRefusedError(RenderError):
    """Raised by the template compiler when a template asks for what a slot cannot keep."""

    code = "slot-refused"
    advice = "Take it out of the template: a slot keeps colours and outlines, the page all else."

    def __init__(
        self, template: str, *, element: str, property_name: str = "", reason: str
    ) -> None:
        """Name the template, the element, the CSS property where it is known, and why."""
        self.template = template
        self.element = element
        self.property_name = property_name
        self.reason = reason
        asked = f" by {property_name}" if property_name else ""
        super().__init__(
            "Template {template} cannot fill its {element}{asked}: {reason}.",
            template=template,
            element=element,
            asked=asked,
            reason=Sentence(reason),
        )


class ProofFailedError(RenderError):
    """Raised by the proof when a finished file does not read back as it should."""

    code = "proof-failed"
    advice = "Nothing was handed over. Print the cards named one by one to find the cause."

    def __init__(self, faults: Sequence[str]) -> None:
        """Keep each fault as a sentence with page and place."""
        self.faults = tuple(faults)
        super().__init__("The proof failed: {faults}", faults="; ".join(faults))


class StoreError(ServiceError):
    """Raised when the store cannot keep or find what it was asked for."""

    code = "store"
    advice = "Nothing was changed. Try again; if it comes back, tell whoever runs this."


class NotFoundError(StoreError):
    """Raised by the store when a number names nothing it holds."""

    code = "not-in-store"
    advice = "Compare the number with the record, or look for it by its title."

    def __init__(self, number: str, *, what: str) -> None:
        """Quote the number and say what was looked for."""
        self.what = what
        self.number = number
        super().__init__("There is no {what} {number!r}.", what=Sentence(what), number=number)


class PackingConflictError(StoreError):
    """Raised by the store when a packing was changed from a state that is no longer the current.

    Both states are kept as canonical JSON of the packing; `current` is empty where there is none.
    """

    code = "packing-conflict"
    advice = "Compare both states, and save again on top of the current one."

    def __init__(
        self, container_number: str, *, expected: int, revision: int, yours: str, current: str
    ) -> None:
        """Name the container, the revision expected and the current one, and keep both states."""
        self.container_number = container_number
        self.expected = expected
        self.revision = revision
        self.yours = yours
        self.current = current
        super().__init__(
            "{container_number} was to be changed from revision {expected},"
            " and is at revision {revision}.",
            container_number=container_number,
            expected=expected,
            revision=revision,
        )


class PackedElsewhereError(StoreError):
    """Raised by the store when an object, or a named part of it, would lie in two containers."""

    code = "packed-elsewhere"
    advice = "Move it from where it lies, or take it out there first."

    def __init__(self, object_number: str, *, container_number: str, lies_in: str) -> None:
        """Name the object, the container it was to go into and the one it lies in."""
        self.object_number = object_number
        self.container_number = container_number
        self.lies_in = lies_in
        super().__init__(
            "{object_number} cannot go into {container_number}: it lies in {lies_in}.",
            object_number=object_number,
            container_number=container_number,
            lies_in=lies_in,
        )


class CardStateError(StoreError):
    """Raised by the store when a printed card cannot go from its state to the one asked for."""

    code = "card-state"
    advice = "Print the card again and use the new one."

    def __init__(self, card_id: int, *, state: str, wanted: str) -> None:
        """Name the printed card, its state, and the state asked for."""
        self.card_id = card_id
        self.state = state
        self.wanted = wanted
        super().__init__(
            "Printed card {card_id} is {state} and cannot become {wanted}.",
            card_id=card_id,
            state=state,
            wanted=wanted,
        )


class WrongContainerError(StoreError):
    """Raised when a card is attached to a container that is not its own."""

    code = "wrong-container"
    advice = "Take the card off this container and put it on its own."

    def __init__(self, card_of: str, *, container_number: str) -> None:
        """Name the container of the card and the one it was put on."""
        self.card_of = card_of
        self.container_number = container_number
        super().__init__(
            "This is a card of {card_of}; the container is {container_number}.",
            card_of=card_of,
            container_number=container_number,
        )


class UnstorableTextError(StoreError):
    """Raised by the store when a text holds what not every database can keep."""

    code = "unstorable-text"
    advice = "Retype the text; it holds a NUL or half of a character."

    def __init__(self, text: str) -> None:
        """Quote the text."""
        self.text = text
        super().__init__("The text {text!a} cannot be stored.", text=text[:80])


class DayAheadError(StoreError):
    """Raised by the store when something is to be noted as done on a day that has not come."""

    code = "day-ahead"
    advice = "Write the day on which it was done, such as 2026-11-25."

    def __init__(self, container_number: str, *, day: date) -> None:
        """Name the container and the day."""
        self.container_number = container_number
        self.day = day
        super().__init__(
            "{container_number} cannot have been checked on {day}, a day to come.",
            container_number=container_number,
            day=day,
        )


class CursorError(StoreError):
    """Raised by the lists when a page is asked for with a cursor that none of them gave."""

    code = "cursor"
    advice = "Begin with the first page, and follow its link to the next."

    def __init__(self, cursor: str) -> None:
        """Keep the cursor; it is not repeated, since anybody may have written it."""
        self.cursor = cursor
        super().__init__("The cursor is none that a list gave.")


class FileNotStoredError(StoreError):
    """Raised by the shelf when a file that the store names is not there."""

    code = "file-not-stored"
    advice = "Bring the file again, or restore it from a backup."

    def __init__(self, sha256: str) -> None:
        """Name the file by its SHA-256."""
        self.sha256 = sha256
        super().__init__("There is no file {sha256}.", sha256=sha256)


class FileDamagedError(StoreError):
    """Raised by the shelf when the bytes of a file are not those that were put there."""

    code = "file-damaged"
    advice = "Restore the file from a backup; the disk it lies on may be failing."

    def __init__(self, sha256: str) -> None:
        """Name the file by its SHA-256."""
        self.sha256 = sha256
        super().__init__("The file {sha256} is damaged.", sha256=sha256)


class BackupError(StoreError):
    """Raised when a backup cannot be made, is not whole, or has nowhere to go."""

    code = "backup"
    advice = "Nothing was changed. Use another backup, or another place."

    def __init__(self, name: str, *, reason: str) -> None:
        """Name the backup and say what is wrong."""
        self.name = name
        self.reason = reason
        super().__init__("{name}: {reason}.", name=name, reason=Sentence(reason))


class PeopleError(StoreError):
    """Raised when users, or what signs them in, cannot be kept or used as asked."""

    code = "people"
    advice = "Ask whoever manages the users."


class PasswordError(PeopleError):
    """Raised when a new password is too short or too long; it may be of anything else."""

    code = "password-length"
    advice = "Take several words that nobody else would put together."

    def __init__(self, *, least: int, most: int) -> None:
        """Give the limits, in characters."""
        self.least = least
        self.most = most
        super().__init__("A password has {least} to {most} characters.", least=least, most=most)


class UserNameError(PeopleError):
    """Raised when a name cannot stand in the history."""

    code = "user-name"
    advice = "Write the name as others know it, such as Ada Quill."

    def __init__(self, name: str, *, most: int) -> None:
        """Quote the name and give the longest that is taken."""
        self.name = name
        self.most = most
        super().__init__(
            "{name!a} is no name of 1 to {most} letters that can be seen.",
            name=name[:80],
            most=most,
        )


class UserTakenError(PeopleError):
    """Raised when a user is added whose name somebody has."""

    code = "user-taken"
    advice = "Add something that tells the two apart, such as the department."

    def __init__(self, name: str) -> None:
        """Quote the name."""
        self.name = name
        super().__init__("There is a user {name!r} already.", name=name)


class LastManagerError(PeopleError):
    """Raised when nobody would be left who may manage the users, or the first could not."""

    code = "last-manager"
    advice = "Give somebody else the role manage first."

    def __init__(self, name: str) -> None:
        """Name the user who has to be a manager."""
        self.name = name
        super().__init__("{name!r} has to be a manager: there is no other.", name=name)


class ScopeError(PeopleError):
    """Raised when a token is to do more than its user may, or nothing."""

    code = "token-scope"
    advice = "Name scopes that the role of the user includes: view, pack, print or manage."

    def __init__(self, scopes: Sequence[str], *, allowed: Sequence[str]) -> None:
        """List what was asked for and what may be given."""
        self.scopes = tuple(scopes)
        self.allowed = tuple(allowed)
        super().__init__(
            "A token for {asked} cannot be made; allowed: {allowed}.",
            asked=", ".join(scopes) or Sentence("nothing"),
            allowed=", ".join(allowed),
        )


class SignInError(PeopleError):
    """Raised when name and password do not let anybody in; it does not say which was wrong."""

    code = "sign-in-failed"
    advice = "Type both again; whoever manages the users can set a new password."

    def __init__(self) -> None:
        """Say the same whatever was wrong."""
        super().__init__("Name and password do not belong together.")


class PairingError(PeopleError):
    """Raised when a code signs no device in: mistyped, used before, or too old."""

    code = "pairing-failed"
    advice = "Make a new code and use it within five minutes."

    def __init__(self) -> None:
        """Say the same whatever was wrong."""
        super().__init__("The code is mistyped, was used before, or is too old.")


class StoreTooNewError(StoreError):
    """Raised at the opening of a store that a newer version of the service has changed."""

    code = "store-too-new"
    advice = "Use the newer version of the service with it, or restore an older backup."

    def __init__(self, revision: str) -> None:
        """Name the form the store is in."""
        self.revision = revision
        super().__init__(
            "The store is in the form {revision!r}, which is not known here.", revision=revision
        )


class StoreBusyError(StoreError):
    """Raised by the store when others kept it locked for longer than is waited."""

    code = "store-busy"
    advice = "Nothing was changed. Wait a little and try again."


class StoreFullError(StoreError):
    """Raised by the store when the disk or its quota is full."""

    code = "store-full"
    advice = "Nothing was changed. Make room on the disk and try again."


class JobError(ServiceError):
    """Raised when work in a child process does not end well."""

    code = "job"


class JobTimedOutError(JobError):
    """Raised when a child process is stopped at its time limit."""

    code = "job-timed-out"
    advice = "Print fewer cards at once, or look for a record with unusually long text."

    def __init__(self, *, seconds: float) -> None:
        """Give the limit."""
        self.seconds = seconds
        super().__init__("The work was stopped after {seconds:.0f} seconds.", seconds=seconds)


class JobCrashedError(JobError):
    """Raised when a child process dies."""

    code = "job-crashed"

    def __init__(self, *, exit_code: int | None) -> None:
        """Give the exit code, None where it is not known."""
        self.exit_code = exit_code
        super().__init__("A worker process died (exit code {exit_code}).", exit_code=exit_code)


class NotSentError(ServiceError):
    """Raised when a printer in the network did not take a file."""

    code = "not-sent"
    advice = "Look at the printer, or open the PDF and print it yourself."

    def __init__(self, printer: str, *, reason: str) -> None:
        """Name the printer and say what happened."""
        self.printer = printer
        self.reason = reason
        super().__init__("{printer}: {reason}.", printer=printer, reason=Sentence(reason))


class ConfigError(ServiceError):
    """Raised at start when a setting cannot be used."""

    code = "setting"
    advice = "Correct the setting and start again."

    def __init__(self, setting: str, *, reason: str) -> None:
        """Name the setting and say what is wrong."""
        self.setting = setting
        self.reason = reason
        super().__init__("Setting {setting}: {reason}.", setting=setting, reason=Sentence(reason))
