"""For all that is done on a page: the path by which a program does it, written out by hand."""

from __future__ import annotations

_TWINS = """
POST /sign-in = POST /api/sessions
POST /sign-out = DELETE /api/sessions/current
POST /pair = POST /api/pairings/finish
POST /people/phone = POST /api/pairings
POST /people/password = POST /api/sessions/password
POST /people/tokens = POST /api/tokens
POST /people/tokens/revoke = DELETE /api/tokens/{token}
POST /people/add = POST /api/users
POST /people/role = PATCH /api/users/{name}
POST /people/disable = PATCH /api/users/{name}
POST /people/enable = PATCH /api/users/{name}
POST /people/new-password = PATCH /api/users/{name}
POST /add/photos = PUT /api/objects/{number}/photos
POST /photo/change = PATCH /api/objects/{number}/photos/{sha256}
POST /photo/crop = PATCH /api/objects/{number}/photos/{sha256}
POST /photo/move = PUT /api/objects/{number}/photos
POST /pack/item = POST /api/containers/{number}/items
POST /pack/new = POST /api/begun-containers
POST /pack/undo = POST /api/containers/{number}/take-out
POST /pack/weigh = PATCH /api/containers/{number}
POST /edit/location = PATCH /api/containers/{number}
POST /edit/weight = PATCH /api/containers/{number}
POST /checks/note = POST /api/containers/{number}/checks
POST /checks/take-back = DELETE /api/containers/{number}/checks/{check}
POST /contents/put-in = POST /api/containers/{number}/put-in
POST /contents/put-in-new = POST /api/containers/{number}/items
POST /contents/take-out = POST /api/containers/{number}/take-out
POST /contents/place = POST /api/containers/{number}/place-anew
POST /contents/step = POST /api/containers/{number}/packings
POST /contents/order = POST /api/containers/{number}/packings
POST /contents/move = POST /api/moves
POST /contents/move-here = POST /api/moves
POST /contents/out = POST /api/outs
POST /contents/returned = POST /api/outs/{out}/back
POST /contents/back = POST /api/containers/{number}/packings
POST /tasks/cancel = POST /api/tasks/{task}/cancel
POST /print/look = POST /api/prints/preview
POST /print/make = POST /api/tasks/prints
POST /run/spoiled = POST /api/tasks/spoiled
POST /run/send = POST /api/prints/{run}/send
POST /attach/card = POST /api/cards/{card}/attached
POST /attach/run = POST /api/attachments
POST /attach/undo = POST /api/cards/{card}/taken-back
POST /attach/scanned = POST /api/cards/{card}/attached
POST /stocks/forget = DELETE /api/own-stocks/{name}
POST /stocks/keep = POST /api/own-stocks
POST /import = POST /api/imports/sample
POST /import/look = POST /api/imports/preview
POST /import/take-over = POST /api/tasks/imports
POST /import/undo = POST /api/imports/{import_id}/undo
POST /new/container = POST /api/containers
POST /edit/container = PUT /api/containers/{number}
POST /new/object = POST /api/objects
POST /edit/object = PUT /api/objects/{number}
"""
TWINS = dict(line.split(" = ") for line in _TWINS.strip().splitlines())

ALONE = {
    "POST /you": "the name and language of whoever reads",
    "POST /print/sheets": "the picture of a sheet, of which nothing is kept",
    "POST /attach/begin": "the walk is kept in the browser",
    "POST /attach/end": "the walk is kept in the browser",
    "POST /attach/hold": "the card in hand is kept in the browser",
    "POST /printers/address": "a program sends to the address it names",
    "POST /printers/forget": "measured by command or on the page",
    "POST /printers/measure": "measured by command or on the page",
    "POST /printers/restore": "measured by command or on the page",
    "POST /start/demo": "the demo is shown by a command",
}
"""What only a page does, and why."""
