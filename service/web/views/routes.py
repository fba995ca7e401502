"""All pages; each form on them carries the token of the browser it was shown in."""

from __future__ import annotations

from fastapi import APIRouter, Depends

from service.web.views.attach import page as attach_page
from service.web.views.attach import scanned
from service.web.views.checks import due as due_checks
from service.web.views.checks import look as check_look
from service.web.views.checks import note, papers, pests
from service.web.views.containers import list as container_list
from service.web.views.containers import page as container_page
from service.web.views.containers.record import edit, quick
from service.web.views.contents import arrange, back, move, outs, place, put_in, suggest, take_out
from service.web.views.desk import look, swaps
from service.web.views.desk import make as desk_make
from service.web.views.desk import page as desk_page
from service.web.views.find import find
from service.web.views.help import pages as help_pages
from service.web.views.history import container as container_history
from service.web.views.intake import check as intake_check
from service.web.views.intake import done as intake_done
from service.web.views.intake import list as import_list
from service.web.views.intake import look as intake_look
from service.web.views.intake import send as intake_send
from service.web.views.intake import take_back
from service.web.views.objects import list as object_list
from service.web.views.objects import page as object_page
from service.web.views.objects.photos import add as add_photos
from service.web.views.objects.photos import change as change_photo
from service.web.views.objects.photos import page as photo_page
from service.web.views.objects.record import edit as edit_object
from service.web.views.pack import choose, item, packed, table, undo, worker
from service.web.views.paper import measure, measured, printers, sheets, stocks
from service.web.views.patterns import page as pattern_page
from service.web.views.people import own_password, pair, phone, share, sign_in, tokens, user, users
from service.web.views.runs import list as run_list
from service.web.views.runs import run
from service.web.views.runs import send as run_send
from service.web.views.shell import assets
from service.web.views.shell.reader import check_form
from service.web.views.start import demo, page, you
from service.web.views.tasks import page as task_page

router = APIRouter(dependencies=[Depends(check_form)])
PARTS = (
    *(page, demo, you, container_list),
    *(sign_in, pair, phone, tokens, own_password, user, users, share),
    *(choose, table, item, undo, packed, worker),
    *(object_list, edit_object, add_photos, change_photo, photo_page, object_page),
    *(put_in, take_out, place, arrange, move, outs, back, suggest),
    *(edit, quick, container_history, container_page, find),
    *(desk_page, desk_make, look, swaps),
    *(task_page, run_list, run_send, run, attach_page, scanned),
    *(due_checks, check_look, note, pests, papers),
    *(intake_send, intake_look, intake_check, intake_done, take_back, import_list),
    *(stocks, measure, sheets, printers, measured),
)
for each in PARTS:
    router.include_router(each.router)
for other in (desk_make, swaps, worker):
    router.include_router(other.files)

open_router = APIRouter()
"""What is there without a store, too."""
open_router.include_router(assets.router)
open_router.include_router(help_pages.router)
open_router.include_router(pattern_page.router)
