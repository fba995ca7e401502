"""Is what stands on a sheet the very ink that was proved as a face?"""

from __future__ import annotations

import hashlib
import io
from collections.abc import Iterable, Iterator

import pikepdf
from pikepdf import Dictionary, Name

_OUTLINES = (Name.FontFile2, Name.FontFile3)


def face_digests(pdfs: Iterable[bytes]) -> Iterator[bytes]:
    """Give the digest of every page of some files, one file after another."""
    for data in pdfs:
        with pikepdf.open(io.BytesIO(data)) as pdf:
            # A face's file lists what all its pages use; a form takes only its own.
            pdf.remove_unreferenced_resources()
            for page in pdf.pages:
                content = b"\n".join(part.read_bytes() for part in _parts(page.obj.Contents))
                yield _digest(content, page.obj.get(Name.Resources, Dictionary()))


def form_digest(form: pikepdf.Object) -> bytes:
    """Give the digest of a form that was made of a page."""
    return _digest(form.read_bytes(), form.get(Name.Resources, Dictionary()))


def _parts(contents: pikepdf.Object) -> list[pikepdf.Object]:
    return list(contents.as_list()) if isinstance(contents, pikepdf.Array) else [contents]


def _digest(content: bytes, resources: pikepdf.Object) -> bytes:
    """Hash the instructions, the pictures they draw and the outlines they set."""
    digest = hashlib.sha256(content.strip())
    for name, drawn in sorted(resources.get(Name.XObject, Dictionary()).as_dict().items()):
        digest.update(str(name).encode() + drawn.read_raw_bytes())
    for name, font in sorted(resources.get(Name.Font, Dictionary()).as_dict().items()):
        digest.update(str(name).encode() + _outlines(font))
    return digest.digest()


def _outlines(font: pikepdf.Object) -> bytes:
    for descendant in font.get(Name.DescendantFonts, pikepdf.Array()).as_list():
        described = descendant.get(Name.FontDescriptor, Dictionary())
        for key in _OUTLINES:
            if key in described:
                return bytes(described[key].read_raw_bytes())
    return b""
