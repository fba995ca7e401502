"""Cards that are printed once more because their sheet was spoiled."""

from __future__ import annotations

from service.jobs.kinds import Job, tell_run
from service.jobs.requests import SpoiledRequest, read_request
from service.keeping.printing.printers_file import name_printer
from service.keeping.printing.prints import MadeRun
from service.keeping.printing.spoil import SpoiledSheet, print_spoiled
from service.store.handles import Connection


def run_spoiled(job: Job) -> None:
    """Print the cards of a spoiled sheet again; they are marked as spoiled with the new run.

    Raises:
        TaskOverError: When the task was finished meanwhile; nothing is marked.
        ServiceError: When no card lies on that sheet any more, or it cannot be printed.
    """
    asked = read_request(SpoiledRequest, job.task.request)
    printer = name_printer(job.desk.data_folder, asked.printer, asked.tray)
    sheet = SpoiledSheet(asked.run_id, asked.file, asked.sheet, printer)

    def also_save(connection: Connection, made: MadeRun) -> None:
        job.finish(connection, tell_run(made))

    print_spoiled(job.desk, sheet, stamp=job.stamp, on_progress=job.watch(), also_save=also_save)
