"""The demo: a new store with the invented museum in it, every card printed and on its box."""

from __future__ import annotations

import shutil
from pathlib import Path

from rich.console import Console

from service.cards.words import count
from service.cli.at_desk import now, settings_of_demo
from service.cli.printing import show_progress
from service.cli.store.printing import write_files
from service.config import Settings
from service.keeping.printing.attach import attach_run
from service.keeping.printing.prints import MadeRun, print_run
from service.keeping.taking_in import take_in
from service.pipeline.options import PrintOptions
from service.store.history import Stamp
from service.store.open import STORE_FILE, writing
from service.wiring import open_desk

DEMO = Path(__file__).parents[2] / "sample_records" / "port_merrow"
OUTPUT = Path("out")
_ACTOR = "Port Merrow Museum"


def show_demo(console: Console, settings: Settings) -> int:
    """Begin the demo's store anew, print all of it into `out/`, and say how a box is repacked.

    Raises:
        ServiceError: When the demo cannot be printed.
    """
    own = settings_of_demo(settings)
    _clear(own.data)
    stamp = Stamp(_ACTOR, now())
    with open_desk(own) as desk, show_progress(console) as tell:
        take_in(desk, DEMO, stamp=stamp, on_progress=tell)
        made = print_run(desk, PrintOptions(), stamp=stamp, on_progress=tell)
        write_files(desk, made.files, OUTPUT)
        with writing(desk.engine) as connection:
            attach_run(connection, made.run_id, stamp=stamp)
    for line in _say(made, own.data):
        print(line)  # noqa: T201 - the answer of the command itself
    return 0


def _clear(folder: Path) -> None:
    """Take away what an earlier demo kept; its thumbnails and plates serve again."""
    shutil.rmtree(folder / "files", ignore_errors=True)
    for path in folder.glob(f"{STORE_FILE}*"):
        path.unlink()


def _say(made: MadeRun, folder: Path) -> tuple[str, ...]:
    sheets = {(card.made.file, sheet) for card in made.cards for sheet, _ in card.made.places}
    cards = f"{count(len(made.cards), 'card')} on {count(len(sheets), 'sheet')}"
    return (
        f"Printed the demo: {cards} in {count(len(made.files), 'file')}.",
        f"Look at them in {OUTPUT.resolve()}: lid cards, end labels, cover cards, lists.",
        "Every text, symbol, picture and place was read back from the finished files.",
        "",
        f"The demo's store in {folder} knows them all. Repack a box, and see what is wrong then:",
        '  python3 -m service store --demo move 1987.412.9 --to B-036 --why "lies flat there"',
        "  python3 -m service store --demo reprints",
        "  python3 -m service store --demo print --reprints -o out/",
        "Or do the same on its pages, in a browser:",
        "  python3 -m service serve --demo",
        "",
        "See what is wrong in your own records, a folder of CSV files and photos, and print them:",
        "  python3 -m service check FOLDER",
        "  python3 -m service print FOLDER -o out/",
        "Keep a store of your own, on pages or by command (README, 'Keep a store'):",
        "  python3 -m service serve",
    )
