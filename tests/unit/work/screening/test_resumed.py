"""What is done stays done, and a table that was broken off comes out the same."""

import os
import random
import shutil
import signal
import subprocess
import sys
import time

import pyarrow.parquet as pq
import pytest

from meterlog.model import Limits
from meterlog.model.amendment import Amendment, AmendmentKind
from meterlog.work.amendments import add_amendment


class Stopped(Exception):
    """As by Ctrl-C."""


def test_nothing_is_done_twice_and_the_table_stays(shelf, screened):
    first, rows = screened(shelf)
    assert first.reviewed == 15
    second, again = screened(shelf)
    assert second.reviewed == 0
    assert again == rows
    assert not (second.table.parent / "parts").exists()


def test_only_what_changed_is_done_again(shelf, screened, of, rig):
    screened(shelf)
    changed = shelf / "2026-01" / "run-000000"
    add_amendment(
        changed, Amendment(AmendmentKind.LIMIT, "open_current_a", None, "0.3", "0.4", "A. B.", "so")
    )
    touched = shelf / "2026-02" / "run-000001" / "data" / "line-logger.arrows"
    content = bytearray(touched.read_bytes())
    content[len(content) // 2] ^= 1
    touched.write_bytes(bytes(content))
    later = time.time() + 60
    os.utime(touched, (later, later))
    shutil.rmtree(shelf / "2026-03" / "run-000002")
    rig.make(shelf / "new", 500, seconds=3.0, rate=10.0)
    said, rows = screened(shelf)
    assert said.reviewed == 3
    assert said.recordings == 15
    (edited,) = of(rows, folder=str(changed))
    assert edited["edits"] == 1
    assert edited["not_good"] == "it has edits on top"
    (spoilt,) = of(rows, folder=str(shelf / "2026-02" / "run-000001"))
    assert spoilt["state"] == "changed"
    assert not of(rows, folder=str(shelf / "2026-03" / "run-000002"))


def test_a_copy_with_other_times_of_its_files_is_as_it_was_sealed(make, screened):
    folder = make("run", 0)
    screened(folder.parent)
    for path in sorted(folder.rglob("*"), reverse=True):
        os.utime(path, (1_000_000_000, 1_000_000_000))
    said, _ = screened(folder.parent)
    assert said.reviewed == 0


def test_with_other_limits_all_is_done_again(make, screened):
    folder = make("run", 0)
    screened(folder.parent)
    said, _ = screened(folder.parent, limits=Limits(name="other"))
    assert said.reviewed == 1


@pytest.mark.parametrize("at", [1, 4, 9])
def test_stopped_in_the_middle_it_goes_on_to_the_same_table(shelf, screened, at):
    _, wanted = screened(shelf, out="whole")

    def stop(done, whole):
        if whole and done >= at:
            raise Stopped

    with pytest.raises(Stopped):
        screened(shelf, progress=stop)
    said, rows = screened(shelf)
    assert 0 < said.reviewed <= 15 - at
    assert rows == wanted


def test_a_part_cut_anywhere_is_left_out_and_done_again(shelf, screened, tmp_path):
    _, wanted = screened(shelf, out="whole")

    def stop(done, whole):
        if whole and done >= 6:
            raise Stopped

    dice = random.Random(8)
    for turn in range(6):
        out = f"cut-{turn}"
        with pytest.raises(Stopped):
            screened(shelf, out=out, progress=stop)
        parts = sorted((tmp_path / out / "parts").glob("*.parquet"))
        content = dice.choice(parts).read_bytes()
        victim = dice.choice(parts)
        victim.write_bytes(content[: dice.randrange(len(content))])
        (tmp_path / out / "parts" / ".writing-0123dead").write_bytes(b"half")
        _, rows = screened(shelf, out=out)
        assert rows == wanted


def test_a_table_that_is_damaged_is_made_anew(shelf, screened):
    said, wanted = screened(shelf)
    content = said.table.read_bytes()
    said.table.write_bytes(content[: len(content) // 2])
    said, rows = screened(shelf)
    assert said.reviewed == 15
    assert rows == wanted


@pytest.mark.kill
@pytest.mark.slow
def test_killed_at_any_instant_it_goes_on_to_the_same_table(shelf, screened, tmp_path):
    _, wanted = screened(shelf, out="whole")
    out = tmp_path / "killed"
    command = [sys.executable, "-m", "meterlog", "screen", str(shelf), "--out", str(out)]
    command += ["--workers", "2"]
    dice = random.Random(12)
    kept = []
    for _ in range(3):
        child = subprocess.Popen(
            command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, start_new_session=True
        )
        until = time.monotonic() + 60.0
        while not list((out / "parts").glob("*.parquet")) and child.poll() is None:
            assert time.monotonic() < until
            time.sleep(0.005)
        time.sleep(dice.uniform(0.0, 0.3))
        child.kill()
        child.wait()
        kept.append(len(list((out / "parts").glob("*.parquet"))))
        _wait_gone(child.pid)
        shutil.rmtree(out / "parts", ignore_errors=True) if len(kept) == 2 else None
    done = subprocess.run(command, capture_output=True, text=True, timeout=240, check=True)
    assert "15 recordings" in done.stdout
    assert pq.read_table(out / "findings.parquet").to_pylist() == wanted


def _wait_gone(session):
    """Wait until no worker of a killed program is left."""
    until = time.monotonic() + 60.0
    while time.monotonic() < until:
        try:
            os.killpg(session, 0)
        except ProcessLookupError:
            return
        time.sleep(0.02)
    os.killpg(session, signal.SIGKILL)
    raise AssertionError("workers outlived the program that was killed")
