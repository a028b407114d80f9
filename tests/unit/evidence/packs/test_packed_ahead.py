"""A file that is packed ahead comes out of the zip, and of the zip's bytes, as any other."""

import errno
import threading
import time
import zipfile
import zlib

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from meterlog.evidence import packed_ahead
from meterlog.evidence.pack_zip import write_zip
from meterlog.evidence.packed_ahead import PackedAhead, pack


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    content=st.one_of(
        st.binary(max_size=5000),
        st.lists(st.sampled_from([b"12.34,", b"0.001,", b"running\n"]), max_size=3000).map(
            b"".join
        ),
    ),
    size=st.integers(1, 4000),
)
def test_the_zip_is_the_same_to_the_byte(tmp_path_factory, content, size):
    place = tmp_path_factory.mktemp("zip")
    folder = place / "claim"
    (folder / "data").mkdir(parents=True)
    for name in ("data/a.csv", "data/b.png", "data/c.csv"):
        (folder / name).write_bytes(content)
    ahead = pack(content[at : at + size] for at in range(0, len(content), size))
    write_zip(folder, place / "one.zip")
    packed = {"data/a.csv": ahead}
    write_zip(folder, place / "two.zip", packed=packed.get)
    assert (place / "one.zip").read_bytes() == (place / "two.zip").read_bytes()
    with zipfile.ZipFile(place / "two.zip") as archive:
        assert archive.testzip() is None
        assert archive.read("claim/data/a.csv") == content
    assert zlib.decompress(ahead.stream) == content
    assert ahead.size == len(content)


def test_a_large_table_is_the_same_however_it_is_packed(tmp_path):
    folder = tmp_path / "claim"
    folder.mkdir()
    times = range(150_000)
    rows = "".join(f"{k / 1000:.3f},{12 + k % 97 / 500:.3f},{k % 13 / 7:.6f}\n" for k in times)
    (folder / "readings.csv").write_text(rows)  # several pieces
    assert len(rows) > 3 * packed_ahead.PIECE
    write_zip(folder, tmp_path / "one.zip")
    with PackedAhead() as ahead:
        ahead.begin("readings.csv", folder / "readings.csv")
        write_zip(folder, tmp_path / "two.zip", packed=ahead.get)
        assert ahead.get("readings.csv").size == len(rows)
        assert ahead.get("other.csv") is None
    assert (tmp_path / "one.zip").read_bytes() == (tmp_path / "two.zip").read_bytes()


def test_what_can_not_be_read_is_told_where_it_is_wanted(tmp_path, monkeypatch):
    path = tmp_path / "readings.csv"
    path.write_bytes(bytes(1 << 19))

    def gone(path):
        raise FileNotFoundError(errno.ENOENT, "No such file or directory", str(path))

    monkeypatch.setattr(packed_ahead, "open_plain", gone)
    with PackedAhead() as ahead:
        ahead.begin("readings.csv", path)
        with pytest.raises(FileNotFoundError, match="No such file"):
            ahead.get("readings.csv")


def test_who_leaves_does_not_wait_for_all_of_it(tmp_path, monkeypatch):
    monkeypatch.setattr(packed_ahead, "PIECE", 4096)
    path = tmp_path / "readings.csv"
    path.write_bytes(bytes(1 << 22))
    seen, real = threading.Event(), zlib.crc32

    def slow(piece, crc):
        seen.set()
        time.sleep(0.01)
        return real(piece, crc)

    monkeypatch.setattr(packed_ahead.zlib, "crc32", slow)
    began_s = time.monotonic()
    with PackedAhead() as ahead:
        for name in ("a", "b", "c"):
            ahead.begin(name, path)
        assert seen.wait(60)
    assert time.monotonic() - began_s < 5  # all of it takes ten seconds and more for each
