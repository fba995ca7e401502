"""Whose work each path is, written out by hand: a route that is not here fails its test."""

from __future__ import annotations

OPEN_TO_ALL = """
GET /assets/{digest}/{name}
GET /health
GET /c/{number}
POST /api/sessions
POST /api/pairings/finish
"""
VIEW = """
GET /api/imports/{import_id}
GET /api/mappings
GET /api/mappings/{name}
GET /api/objects/{number}/photos
GET /api/objects/{number}/photos/{sha256}
GET /api/photos/{sha256}
GET /
GET /you
POST /you
GET /containers
GET /api/stocks/{name}
POST /api/stocks/preview
GET /api/containers/{number}/preview
GET /api/containers/{number}/previews
GET /api/objects/{number}/preview
POST /api/prints/preview
GET /api/prints/preview/{plan}/files/{name}/sheets/{sheet}
GET /api/prints/{run}/files/{name}/pages/{page}
GET /openapi.json
GET /docs
GET /rules
GET /api/rules
GET /api/kinds
GET /api/stocks
GET /api/problems
POST /api/render
POST /api/check
GET /api/objects
GET /api/objects/{number}
GET /api/objects/{number}/places
GET /api/objects/{number}/history
GET /api/containers
GET /api/containers/{number}
GET /api/containers/{number}/history
GET /api/containers/{number}/packings
GET /api/containers/{number}/packings/{revision}
GET /api/containers/{number}/checks
GET /api/checks/due
GET /api/outs
GET /api/search
GET /api/imports
GET /api/printers
GET /api/prints
GET /api/prints/{run}
GET /api/prints/{run}/files/{name}
GET /api/reprints
GET /api/tasks
GET /api/tasks/{task}
GET /api/sessions/current
DELETE /api/sessions/current
POST /api/sessions/password
GET /api/tokens
POST /api/tokens
DELETE /api/tokens/{token}
POST /api/pairings
"""
PACK = """
PUT /api/objects/{number}/photos
PATCH /api/objects/{number}/photos/{sha256}
POST /api/containers/{number}/packings
POST /api/containers/{number}/put-in
POST /api/containers/{number}/take-out
POST /api/containers/{number}/place-anew
POST /api/containers/{number}/checks
POST /api/moves
POST /api/outs
POST /api/outs/{out}/back
POST /api/outs/{out}/slip
POST /api/check-sheet
POST /api/isolation-labels
POST /api/photos
POST /api/tasks/photos
POST /api/tasks/{task}/cancel
"""
PRINT = """
POST /api/prints
POST /api/prints/{run}/spoiled
POST /api/attachments
POST /api/cards/{card}/attached
POST /api/cards/{card}/spoiled
POST /api/swap-list
POST /api/tasks/prints
"""
MANAGE = """
POST /api/imports/sample
POST /api/imports/{import_id}/undo
PUT /api/mappings/{name}
DELETE /api/mappings/{name}
POST /start/demo
POST /api/objects
PUT /api/objects/{number}
POST /api/containers
PUT /api/containers/{number}
POST /api/imports
POST /api/imports/preview
POST /api/tasks/imports
GET /api/users
POST /api/users
PATCH /api/users/{name}
"""
ROLES: dict[str, str | None] = {
    line: role
    for role, lines in (
        (None, OPEN_TO_ALL),
        ("view", VIEW),
        ("pack", PACK),
        ("print", PRINT),
        ("manage", MANAGE),
    )
    for line in lines.split("\n")
    if line
}
