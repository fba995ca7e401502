"""One copy of every picture in a file that was put together from several.

Each chunk of faces brings its own copy of a photo that stands on faces of more than one chunk.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable

import pikepdf
from pikepdf import Name

_Place = tuple[int, int]


def share_pictures(forms: Iterable[pikepdf.Object]) -> None:
    """Let equal pictures of all forms be one object; what is no longer named is not saved."""
    first_of: dict[bytes, pikepdf.Object] = {}
    seen: set[_Place] = set()
    for form in forms:
        for resources in _resources_below(form, seen):
            _share(resources, first_of)


def _resources_below(form: pikepdf.Object, seen: set[_Place]) -> Iterable[pikepdf.Object]:
    """Give the resources of a form and of every form it draws, each form once."""
    if form.objgen in seen:
        return
    seen.add(form.objgen)
    resources = form.get(Name.Resources)
    if resources is None or Name.XObject not in resources:
        return
    yield resources
    for inner in resources.XObject.as_dict().values():
        if inner.get(Name.Subtype) == Name.Form:
            yield from _resources_below(inner, seen)


def _share(resources: pikepdf.Object, first_of: dict[bytes, pikepdf.Object]) -> None:
    for name, picture in list(resources.XObject.as_dict().items()):
        if picture.get(Name.Subtype) != Name.Image:
            continue
        mask = picture.get(Name.SMask)
        if mask is not None:
            picture.SMask = first_of.setdefault(_digest(mask), mask)
        resources.XObject[Name(name)] = first_of.setdefault(_digest(picture), picture)


def _digest(stream: pikepdf.Object) -> bytes:
    """Hash a picture's bytes as they are stored, and what is said about them."""
    said = [f"{key} {_unparsed(stream[key])}" for key in sorted(stream.keys())]
    digest = hashlib.sha256("\n".join(said).encode())
    digest.update(stream.read_raw_bytes())
    return digest.digest()


def _unparsed(value: object) -> str:
    return value.unparse().decode("latin-1") if isinstance(value, pikepdf.Object) else repr(value)
