"""Recordings in archives: changes inside are seen, wherever in it a recording lies."""

import zipfile

import pytest
from fsspec.implementations.zip import ZipFileSystem

from meterlog.model.amendment import Amendment, AmendmentKind
from meterlog.work.amendments import add_amendment

EDIT = Amendment(AmendmentKind.LIMIT, "hysteresis", None, "0.05", "0.06", "N. N.", "tried")


@pytest.fixture
def packed(tmp_path):
    """Pack a folder, and forget what fsspec has seen of an archive of that name before."""

    def pack(folder):
        place = tmp_path / "packed.zip"
        with zipfile.ZipFile(place, "w") as archive:
            for one in sorted(folder.rglob("*")):
                archive.write(one, one.relative_to(folder))
        ZipFileSystem.clear_instance_cache()
        return f"zip://::file://{place}"

    return pack


def test_a_bit_that_was_turned_in_an_archive_is_seen(make, screened, packed):
    folder = make("run", 0)
    said, _ = screened(packed(folder.parent))
    assert said.outcomes == {"in order": 1}
    assert screened(packed(folder.parent))[0].reviewed == 0
    table = folder / "data" / "line-logger.arrows"
    content = bytearray(table.read_bytes())
    content[len(content) // 2] ^= 0x10
    table.write_bytes(bytes(content))
    said, rows = screened(packed(folder.parent))
    assert said.reviewed == 1
    assert rows[0]["state"] == "changed"
    assert rows == screened(packed(folder.parent), out="fresh")[1]


def test_a_recording_that_is_a_whole_archive_is_judged(make, screened, packed):
    folder = make("run", 0)
    said, rows = screened(packed(folder))
    assert (said.outcomes, said.not_judged) == ({"in order": 1}, ())
    assert rows[0]["state"] == "sealed"


@pytest.mark.parametrize("far", [False, True])
def test_edits_that_were_cut_off_count_as_edits(make, screened, packed, far):
    folder = make("run", 0)
    place = folder.parent

    def screen(out="out"):
        said, rows = screened(packed(place) if far else place, out=out)
        return said, rows[0]["edits"], rows[0]["not_good"], said.baselines

    assert screen()[1:3] == (0, "")
    add_amendment(folder, EDIT)
    (place / "run.amendments.jsonl").unlink()
    said, *found = screen()
    assert said.reviewed == 1
    assert found == [1, "it has edits on top", 0]
    assert screen("fresh")[1:] == tuple(found)
