"""What is fetched fits, is no more than was said, and is gone even where a program was killed."""

import shutil
import signal
import subprocess
import sys
import tempfile
import zipfile
from collections import namedtuple

import pytest

from meterlog.model.errors import UsageError
from meterlog.work.file_lock import alone_with
from meterlog.work.screening.fetching import FetchFailed, at_hand
from meterlog.work.screening.places import Place, places_in

_HOLD = """\
import sys, tempfile, time
from meterlog.work.screening.fetching import at_hand
from meterlog.work.screening.places import places_in
tempfile.tempdir = sys.argv[2]
(place,) = places_in([sys.argv[1]], lambda: None)
with at_hand(place):
    print("on", flush=True)
    time.sleep(300)
"""


@pytest.fixture
def scratch(tmp_path, monkeypatch):
    place = tmp_path / "scratch"
    place.mkdir()
    monkeypatch.setattr(tempfile, "tempdir", str(place))
    return place


@pytest.fixture
def zipped(make, tmp_path):
    """A recording in a zip: what is besides to be in it, and the zip's address."""

    def work(**more):
        folder = make("run", 0)
        archive = tmp_path / "shelf.zip"
        with zipfile.ZipFile(archive, "w", zipfile.ZIP_DEFLATED) as stream:
            for path in sorted(folder.rglob("*")):
                stream.write(path, path.relative_to(folder.parent))
            for name, content in more.items():
                stream.writestr(f"run/data/{name}", content)
        return f"zip://::file://{archive}"

    return work


def test_what_a_killed_program_left_goes_and_what_another_holds_stays(zipped, scratch):
    address = zipped()
    command = [sys.executable, "-c", _HOLD, address, str(scratch)]
    with subprocess.Popen(command, stdout=subprocess.PIPE) as child:
        assert child.stdout.readline() == b"on\n"
        (held,) = (one for one in scratch.iterdir() if one.is_dir())
        (place,) = places_in([address], lambda: None)
        with at_hand(place) as folder:
            assert folder.is_dir()
            assert (held / "recording" / "data").is_dir()
        child.send_signal(signal.SIGKILL)
    assert held.is_dir()
    with at_hand(place):
        assert not held.exists()
    assert list(scratch.iterdir()) == []


def test_what_is_not_there_yet_is_not_swept_away_from_under_another(zipped, scratch):
    (place,) = places_in([zipped()], lambda: None)
    with alone_with(scratch / "meterlog-screen-0a"), at_hand(place):
        assert (scratch / ".meterlog-screen-0a.lock").exists()


def test_what_unpacks_to_more_than_readings_could_is_refused_before(zipped, screened, scratch):
    address = zipped(bomb=bytes(40 << 20))
    said, _ = screened(address)
    ((_, why),) = said.not_judged
    assert "would unpack to" in why
    assert "don't unpack it" in why
    assert list(scratch.iterdir()) == []
    assert screened(address)[0].reviewed == 0


def test_what_has_no_room_is_refused_before(zipped, screened, scratch, monkeypatch):
    usage = namedtuple("Usage", "total used free")
    monkeypatch.setattr(shutil, "disk_usage", lambda path: usage(1000, 1000, 0))
    said, _ = screened(zipped())
    ((_, why),) = said.not_judged
    assert "0 are free" in why
    assert str(scratch) in why


def test_a_file_that_is_longer_than_was_said_is_cut_off(zipped, scratch, monkeypatch):
    address = zipped()
    (place,) = places_in([address], lambda: None)
    from fsspec.implementations.zip import ZipFileSystem

    listed = ZipFileSystem.find

    def shorter(self, path, **more):
        return {
            name: {**one, "size": one["size"] - 1}
            for name, one in listed(self, path, **more).items()
        }

    monkeypatch.setattr(ZipFileSystem, "find", shorter)
    with pytest.raises(FetchFailed, match="longer than its listing says"), at_hand(place):
        pass
    assert list(scratch.iterdir()) == []


def test_an_archive_that_is_none_is_refused(tmp_path):
    (tmp_path / "no.zip").write_bytes(b"nothing of the kind")
    with pytest.raises(UsageError, match="can't be opened"):
        places_in([f"zip://::file://{tmp_path}/no.zip"], lambda: None)


def test_a_local_one_is_reviewed_where_it_lies(make, scratch):
    folder = make("run", 0)
    with at_hand(Place(str(folder), local=True, key="k")) as found:
        assert found == folder
    assert list(scratch.iterdir()) == []
