from __future__ import annotations

import io
import re
from collections.abc import Callable
from pathlib import Path

import pikepdf
import pytest
from pikepdf import Dictionary, ObjectStreamMode

from service.render.reading.objects import Ref
from service.render.reading.pdf_file import PdfFile, opened_file


def file_of(*contents: bytes, packed: bool = True) -> bytes:
    """Let another library write pages with these instructions."""
    with pikepdf.new() as pdf:
        for content in contents:
            page = pdf.add_blank_page(page_size=(100, 200))
            page.obj.Contents = pdf.make_stream(content)
            page.obj.Resources = Dictionary()
        data = io.BytesIO()
        mode = ObjectStreamMode.generate if packed else ObjectStreamMode.disable
        pdf.save(data, object_stream_mode=mode)
    return data.getvalue()


def test_pages_and_streams_are_read() -> None:
    """Each page has its own instructions, in order."""
    contents = [b"q Q", b"0 g " * 500, b"1 g"]
    file = PdfFile(file_of(*contents))
    assert [file.stream(page["/Contents"]).content for page in file.pages()] == contents
    assert all(page["/MediaBox"] == [0.0, 0.0, 100.0, 200.0] for page in file.pages())


def test_a_file_is_read_from_the_disk(tmp_path: Path) -> None:
    """Nothing else is needed than the path."""
    path = tmp_path / "one.pdf"
    path.write_bytes(file_of(b"q Q"))
    with opened_file(path) as file:
        assert len(list(file.pages())) == 1


@pytest.mark.parametrize(
    "change",
    [
        pytest.param(lambda data: data[:-30], id="cut"),
        pytest.param(lambda data: data.replace(b"/XRef", b"/XRef/Prev 9"), id="added to"),
        pytest.param(lambda data: data.replace(b"/XRef", b"/XRef/Encrypt 9 0 R"), id="closed"),
        pytest.param(lambda data: data.replace(b"startxref\n", b"startxref\n9"), id="wrong place"),
        pytest.param(lambda _: file_of(b"q Q", packed=False), id="an older table"),
        pytest.param(lambda _: b"", id="empty"),
    ],
)
def test_other_files_are_refused(change: Callable[[bytes], bytes]) -> None:
    """What is not one whole revision with a cross-reference stream is none of ours."""
    with pytest.raises(ValueError, match=r"."):
        list(PdfFile(change(file_of(b"q Q"))).pages())


def test_what_is_not_there_is_refused() -> None:
    """A missing object, a page taken for a stream, and a stream taken for a page."""
    file = PdfFile(file_of(b"q Q"))
    contents = next(file.pages())["/Contents"]
    root = file.trailer["/Root"]
    assert isinstance(root, Ref)
    for ask in (
        lambda: file.value(999),
        lambda: file.stream(root),
        lambda: file.dictionary(4.0),
        lambda: file.array(root),
        lambda: file.stream(None),
    ):
        with pytest.raises(ValueError, match=r"."):
            ask()
    assert file.stream(contents).content == b"q Q"


def test_a_stream_that_is_shorter_than_it_says_is_refused() -> None:
    """The end is looked for where the length says."""
    data = file_of(b"q Q" * 9)
    with pytest.raises(ValueError, match="does not end where it says"):
        PdfFile(re.sub(rb"/Length \d", b"/Length 9", data))
