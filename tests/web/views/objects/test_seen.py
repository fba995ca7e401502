from __future__ import annotations

from pathlib import Path

import pytest

from service.errors import NotFoundError
from service.keeping.repack import Seen, take_out
from service.pipeline.ready import Workshop
from service.records.record import Collection, Hazard, HazardState, ObjectRecord
from service.store.open import open_folder, writing
from service.store.save_records import save_records
from service.web.views.objects.seen import see_object
from tests.web.store.opened import BOX, SPIKE, STAMP, fill_store
from tests.web.views.objects.made import open_counter


def test_what_happened_and_what_is_lacking_is_gathered(tmp_path: Path, workshop: Workshop) -> None:
    """Where it lies and has been, its hazards, its tag, and what was noticed."""
    fill_store(tmp_path)
    engine = open_folder(tmp_path)
    film = ObjectRecord(
        "F.1",
        object_name="cine film",
        period="1925",
        hazards=(
            Hazard("mould", HazardState.UNCHECKED, review_on=STAMP.at.date().replace(year=2020)),
        ),
    )
    with writing(engine) as connection:
        save_records(connection, Collection(objects=(film,)), stamp=STAMP)
    with open_counter(tmp_path, workshop) as counter:
        spike = see_object(counter, SPIKE)
        assert [one.container_number for one in spike.places] == [BOX]
        assert [stay.verb for stay in spike.stays] == ["put in"]
        assert not spike.object_tag.is_attached
        with writing(engine) as connection:
            take_out(connection, Seen(BOX, 1), SPIKE, stamp=STAMP)
        assert [stay.verb for stay in see_object(counter, SPIKE).stays] == ["taken out", "put in"]
        seen = see_object(counter, "F.1")
        assert [(one.is_recorded, one.is_overdue) for one in seen.hazards] == [
            (True, True),
            (False, False),
        ]
        codes = [finding.code for finding in seen.findings]
        assert codes == ["no-title", "no-photo", "hazard-presumed"]
        with pytest.raises(NotFoundError):
            see_object(counter, "none")
    engine.dispose()
