from __future__ import annotations

import io

import pikepdf
import pypdf
import pytest
from pikepdf import Name

from service.render.compose.writer import PdfWriter
from tests.render.compose.made_plates import opened


def made(*bodies: bytes, stream: bytes = b"") -> bytes:
    """Write a file of one page, with further objects named by its catalog."""
    target = io.BytesIO()
    writer = PdfWriter(target)
    pages = writer.reserve()
    content = writer.add_stream(b"", stream)
    page = writer.add(
        b"<</Type/Page/Parent %d 0 R/MediaBox[0 0 9 9]/Resources<<>>/Contents %d 0 R>>"
        % (pages, content)
    )
    writer.add(b"<</Type/Pages/Count 1/Kids[%d 0 R]>>" % page, number=pages)
    others = b" ".join(b"%d 0 R" % writer.add(body) for body in bodies)
    catalog = writer.add(b"<</Type/Catalog/Pages %d 0 R/Others[%b]>>" % (pages, others))
    writer.close(catalog=catalog, info=writer.add(b"<</Title(x)>>"))
    return target.getvalue()


@pytest.mark.parametrize("count", [0, 1, 195, 196, 450], ids=lambda n: f"{n} more")
def test_every_object_is_found_again(count: int) -> None:
    """One, a full and several object streams read back as they were written."""
    data = made(*[b"(%d)" % n for n in range(count)], stream=b"0 0 1 1 re f")
    with opened(data) as pdf:
        assert [str(one) for one in pdf.Root.Others] == [str(n) for n in range(count)]
        assert pdf.pages[0].obj.Contents.read_raw_bytes() == b"0 0 1 1 re f"
    assert str(pypdf.PdfReader(io.BytesIO(data), strict=True).metadata) == "{'/Title': 'x'}"


def test_the_file_says_which_pdf_it_is() -> None:
    """Object streams are known since PDF 1.5 (ISO 32000-1, 7.5.7); bytes beyond ASCII follow."""
    data = made()
    assert data.startswith(b"%PDF-1.7\n%")
    assert min(data[10:14]) >= 0x80
    assert data.endswith(b"%%EOF\n")


def test_bytes_of_a_stream_are_not_touched() -> None:
    """Neither line ends nor words of the file's own grammar inside a stream do harm."""
    tricky = b"\r\nendstream endobj\r 1 0 obj\n\x00\xff"
    with opened(made(stream=tricky)) as pdf:
        assert pdf.pages[0].obj.Contents.read_raw_bytes() == tricky


def test_the_identifier_is_made_from_what_was_written() -> None:
    """The same file has the same one, another file another (ISO 32000-1, 14.4)."""
    one, again, other = (made(stream=data) for data in (b"n", b"n", b"f"))
    assert one == again
    identifiers = [_identifier(data) for data in (one, other)]
    assert identifiers[0] != identifiers[1]
    assert {len(identifier) for identifier in identifiers} == {16}


def test_long_data_may_go_by_a_name() -> None:
    """Where data has a name of its own, that is what the identifier is made from."""
    found = set()
    for data, known_as in ((b"one", b"a"), (b"two", b"a"), (b"two", b"b")):
        target = io.BytesIO()
        writer = PdfWriter(target)
        writer.add_stream(b"", data, known_as=known_as)
        writer.close(catalog=writer.add(b"<<>>"), info=writer.add(b"<<>>"))
        found.add(target.getvalue().split(b"/ID[<")[1][:32])
    assert len(found) == 2


def test_the_target_need_not_seek() -> None:
    """A pipe will do."""

    class Pipe(io.BytesIO):
        def seekable(self) -> bool:
            return False

        def seek(self, *_: int) -> int:
            raise io.UnsupportedOperation

        def tell(self) -> int:
            raise io.UnsupportedOperation

    pipe = Pipe()
    writer = PdfWriter(pipe)
    writer.close(catalog=writer.add(b"<<>>"), info=writer.add(b"<<>>"))
    assert pipe.getvalue().endswith(b"%%EOF\n")


def _identifier(data: bytes) -> bytes:
    with pikepdf.open(io.BytesIO(data)) as pdf:
        first, second = pdf.trailer[Name.ID].as_list()
        assert bytes(first) == bytes(second)
        return bytes(first)
