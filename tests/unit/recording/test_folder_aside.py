"""What a program left that died is swept up; a recording never is, whatever it is called."""

import pytest

from meterlog.recording import find_unsealed, layout
from meterlog.recording.folder_aside import folder_aside
from meterlog.recording.writer_lock import WriterLock


@pytest.mark.parametrize("name", [".claim-run", ".claim-abcdefgh"])
def test_a_recording_that_was_cut_off_stays(maker, name):
    folder = maker.small(name).folder
    (folder / layout.LOCK).touch()
    before = {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()}
    with folder_aside(maker.folder / "claim"):
        pass
    assert {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()} == before
    assert find_unsealed(maker.folder) == (folder,)


def test_only_what_bears_such_a_name_and_belongs_to_nobody_is_swept_up(tmp_path):
    names = (".claim-abcd_123", ".claim-notes", ".claim-working1", ".claim-1-abcdefgh")
    for name in names:
        (tmp_path / name).mkdir()
        (tmp_path / name / "half.zip").write_bytes(b"half")
        (tmp_path / name / layout.LOCK).touch()
    (tmp_path / names[2] / layout.LOCK).unlink()
    lock = WriterLock(tmp_path / names[2])
    (tmp_path / ".claim-1234567_").mkdir()
    with folder_aside(tmp_path / "claim") as work:
        assert {path.name for path in tmp_path.iterdir()} == {*names[1:], work.name}
    lock.release()
