from __future__ import annotations

from pathlib import Path

from PIL import Image

from service.cli.at_desk import AtDesk
from service.config import Settings
from service.keeping.taking_in import take_in
from service.pipeline.ready import tell_nobody
from tests.store.made import LATER, STAMP


def test_a_folder_is_taken_in_with_its_photos(tmp_path: Path) -> None:
    """Records and photos come together, with what was noticed of both; again changes nothing."""
    source = tmp_path / "FOLDER"
    (source / "photos").mkdir(parents=True)
    (source / "objects.csv").write_text("number,title,weight\nX.112,Buoy,heavy\n", "utf-8")
    Image.new("RGB", (640, 480), "#808080").save(source / "photos" / "X.112_front.jpg")
    with AtDesk(Settings(data=tmp_path / "data", processes=1)).desk() as desk:
        taken = take_in(desk, source, stamp=STAMP, on_progress=tell_nobody)
        again = take_in(desk, source, stamp=LATER, on_progress=tell_nobody)
    assert taken.records.saved.objects.new == ("X.112",)
    assert taken.photos.new == 1
    assert "unreadable-weight" in {one.code for one in taken.findings}
    assert (again.records.saved.objects.touched, again.photos.new) == ((), 0)
