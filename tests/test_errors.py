from __future__ import annotations

import pickle
from datetime import date

import pytest

from service import errors
from service.errors import ServiceError

EXAMPLES: list[tuple[ServiceError, str]] = [
    (errors.ContentsError("Nothing is packed."), "Nothing is packed."),
    (
        errors.UnreadableFileError("o.xls", tried="it is empty"),
        "o.xls cannot be read: it is empty.",
    ),
    (
        errors.MissingSourceError("records", reason="it is not there"),
        "records: it is not there.",
    ),
    (
        errors.TooManyFilesError(count=3),
        "The cards are 3 files, one for each kind and stock.",
    ),
    (
        errors.MissingColumnsError("o.csv", wanted=["number"], found=[]),
        "o.csv has no column number; it has: none.",
    ),
    (
        errors.TooManyRecordsError("o.csv", count=11, limit=10),
        "o.csv holds 11 or more entries; the limit is 10.",
    ),
    (
        errors.AddressError("http://x", reason="it is not https"),
        "The address pattern 'http://x' cannot be used: it is not https.",
    ),
    (
        errors.PayloadTooLongError(length=3000, limit=2331),
        "The QR text is 3000 bytes long; at most 2331 fit.",
    ),
    (
        errors.ModuleTooSmallError(module_mm=0.3, least_mm=0.4, needed_mm=20),
        (
            "A QR module would be 0.30 mm; at least 0.40 mm is needed, that is a symbol"
            " 20.0 mm wide with its clear margin."
        ),
    ),
    (
        errors.DoesNotFitError("photo", needed_mm=30, available_mm=12.25),
        "The photo needs 30.0 mm and the card has 12.2 mm.",
    ),
    (
        errors.UnknownCardKindError("tag", known=["lid-card", "end-label"]),
        "There is no card kind 'tag'; there are: lid-card, end-label.",
    ),
    (
        errors.StockError("mine", measure="pitch", reason="is too small"),
        "Stock 'mine' is impossible: pitch is too small.",
    ),
    (
        errors.UnknownStockError("mine", known=["plain"]),
        "There is no stock 'mine'; there are: plain.",
    ),
    (
        errors.StartPositionError(9, positions=8),
        "Position 9 is not on a sheet of 8 positions.",
    ),
    (
        errors.NoFreePositionError(3, positions=8),
        "No position from 3 to 8 of the first sheet is free.",
    ),
    (
        errors.FaceTooLargeError("B-042", face_mm=(148, 210), stock="mine"),
        "B-042 is 148.0 x 210.0 mm: too large for 'mine'.",
    ),
    (
        errors.CalibrationError(["cross C: across", "measure again"]),
        "The printer was not corrected: cross C: across. measure again.",
    ),
    (
        errors.UnknownPrinterError("B", what="tray", known=["1"]),
        "There is no tray 'B'; known: 1.",
    ),
    (
        errors.NoReachError("mine"),
        "The printer reaches no free position of 'mine' wholly.",
    ),
    (
        errors.TemplateError("card.html", reason="no title"),
        "Template card.html cannot be filled: no title.",
    ),
    (
        errors.AssetError("file:///x"),
        "A template asked for 'file:///x', which is not one of our files.",
    ),
    (errors.PictureError("a.jpg", reason="it is cut off"), "a.jpg: it is cut off."),
    (
        errors.EngineComplaintError(["one", "two"]),
        "The layout engine complained: one; two",
    ),
    (
        errors.SlotRefusedError(
            "lid-card/card.html",
            element="text 'title'",
            property_name="letter-spacing",
            reason="a slot keeps colours alone",
        ),
        (
            "Template lid-card/card.html cannot fill its text 'title' by letter-spacing:"
            " a slot keeps colours alone."
        ),
    ),
    (errors.ProofFailedError(["one", "two"]), "The proof failed: one; two"),
    (errors.NotFoundError("B-9", what="container"), "There is no container 'B-9'."),
    (
        errors.PackingConflictError("B-1", expected=2, revision=3, yours="{}", current="{}"),
        "B-1 was to be changed from revision 2, and is at revision 3.",
    ),
    (
        errors.PackedElsewhereError("1987.4", container_number="B-1", lies_in="B-2"),
        "1987.4 cannot go into B-1: it lies in B-2.",
    ),
    (
        errors.WrongContainerError("B-042", container_number="B-043"),
        "This is a card of B-042; the container is B-043.",
    ),
    (
        errors.DayAheadError("B-042", day=date(2126, 11, 25)),
        "B-042 cannot have been checked on 2126-11-25, a day to come.",
    ),
    (errors.CursorError("x"), "The cursor is none that a list gave."),
    (errors.FileNotStoredError("f00d"), "There is no file f00d."),
    (errors.FileDamagedError("f00d"), "The file f00d is damaged."),
    (
        errors.BackupError("b.zip", reason="it is no whole backup"),
        "b.zip: it is no whole backup.",
    ),
    (
        errors.CardStateError(7, state="spoiled", wanted="attached"),
        "Printed card 7 is spoiled and cannot become attached.",
    ),
    (errors.UnstorableTextError("a\0b"), r"The text 'a\x00b' cannot be stored."),
    (
        errors.StoreTooNewError("r9999"),
        "The store is in the form 'r9999', which is not known here.",
    ),
    (errors.JobTimedOutError(seconds=60), "The work was stopped after 60 seconds."),
    (errors.JobCrashedError(exit_code=-9), "A worker process died (exit code -9)."),
    (
        errors.ConfigError("UNDERLID_PORT", reason="is no number"),
        "Setting UNDERLID_PORT: is no number.",
    ),
    (
        errors.NotSentError("Copier", reason="it does not answer"),
        "Copier: it does not answer.",
    ),
    (
        errors.LastManagerError("Ada Quill"),
        "'Ada Quill' has to be a manager: there is no other.",
    ),
    (errors.UserTakenError("Ada Quill"), "There is a user 'Ada Quill' already."),
    (
        errors.UserNameError("", most=200),
        "'' is no name of 1 to 200 letters that can be seen.",
    ),
    (errors.PasswordError(least=12, most=200), "A password has 12 to 200 characters."),
    (
        errors.PlanTooLargeError(most=250, what="containers"),
        "A preview of a print run shows at most 250 containers.",
    ),
    (errors.PairingError(), "The code is mistyped, was used before, or is too old."),
    (
        errors.ScopeError(["manage"], allowed=["view"]),
        "A token for manage cannot be made; allowed: view.",
    ),
    (errors.SignInError(), "Name and password do not belong together."),
    (
        errors.UnusableMappingError("ours", reasons=["No column holds the number."]),
        "The mapping 'ours' cannot be used. No column holds the number.",
    ),
    (errors.UnusableCropError("a.jpg", reason="too small"), "a.jpg: too small"),
]


@pytest.mark.parametrize(
    ("error", "message"), EXAMPLES, ids=[type(error).__name__ for error, _ in EXAMPLES]
)
def test_message_and_journey(error: ServiceError, message: str) -> None:
    """An error says what happened, and says the same after coming back from a child process."""
    returned = pickle.loads(pickle.dumps(error))  # noqa: S301 - our own bytes
    assert type(returned) is type(error)
    assert str(error) == str(returned) == message
    assert vars(returned) == vars(error)


def test_every_error_with_values_is_among_the_examples() -> None:
    """A class with a message of its own has its message tried here."""
    own = {
        kind
        for kind in vars(errors).values()
        if isinstance(kind, type) and issubclass(kind, ServiceError) and "__init__" in vars(kind)
    }
    assert own - {ServiceError} <= {type(error) for error, _ in EXAMPLES}
