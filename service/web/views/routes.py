"""All pages; each form on them carries the token of the browser it was shown in."""

from __future__ import annotations

from fastapi import APIRouter, Depends

from service.web.views.containers import list as container_list
from service.web.views.objects import list as object_list
from service.web.views.objects import page as object_page
from service.web.views.objects.photos import add as add_photos
from service.web.views.objects.photos import change as change_photo
from service.web.views.objects.photos import page as photo_page
from service.web.views.objects.record import edit as edit_object
from service.web.views.pack import choose, item, packed, table, undo, worker
from service.web.views.shell import assets
from service.web.views.shell.reader import check_form
from service.web.views.start import demo, page, you

router = APIRouter(dependencies=[Depends(check_form)])
PARTS = (
    *(page, demo, you, container_list),
    *(choose, table, item, undo, packed, worker),
    *(object_list, edit_object, add_photos, change_photo, photo_page, object_page),
)
for each in PARTS:
    router.include_router(each.router)

open_router = APIRouter()
"""What is there without a store, too."""
open_router.include_router(assets.router)
