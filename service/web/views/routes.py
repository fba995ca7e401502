"""All pages; each form on them carries the token of the browser it was shown in."""

from __future__ import annotations

from fastapi import APIRouter, Depends

from service.web.views.checks import due, look, note, papers, pests, photo
from service.web.views.containers import list as container_list
from service.web.views.help import pages as help_pages
from service.web.views.paper import measure, measured, printers, sheets, stocks
from service.web.views.patterns import page as pattern_page
from service.web.views.shell import assets
from service.web.views.shell.reader import check_form
from service.web.views.start import demo, page, you

router = APIRouter(dependencies=[Depends(check_form)])
PARTS = (
    *(page, demo, you, container_list),
    *(due, look, note, pests, papers, photo),
    *(stocks, measure, sheets, printers, measured),
)
for each in PARTS:
    router.include_router(each.router)

open_router = APIRouter()
"""What is there without a store, too."""
open_router.include_router(assets.router)
open_router.include_router(help_pages.router)
open_router.include_router(pattern_page.router)
