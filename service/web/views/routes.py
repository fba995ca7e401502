"""All pages; each form on them carries the token of the browser it was shown in."""

from __future__ import annotations

from fastapi import APIRouter, Depends

from service.web.views import photos
from service.web.views.containers import list as container_list
from service.web.views.containers import page as container_page
from service.web.views.containers.record import edit, quick
from service.web.views.contents import arrange, back, move, outs, place, put_in, suggest, take_out
from service.web.views.find import find
from service.web.views.history import container as container_history
from service.web.views.shell import assets
from service.web.views.shell.reader import check_form
from service.web.views.start import demo, page, you

router = APIRouter(dependencies=[Depends(check_form)])
PARTS = (
    *(page, demo, you, container_list),
    *(put_in, take_out, place, arrange, move, outs, back, suggest),
    *(edit, quick, container_history, container_page, find),
)
for each in (*PARTS, photos):
    router.include_router(each.router)

open_router = APIRouter()
"""What is there without a store, too."""
open_router.include_router(assets.router)
