"""Two programs at one port or in one folder: the second is told clearly, the first goes on."""

import os
import subprocess
import sys
import threading
import tty
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime

import pytest

from meterlog.acquire import MeterChoice
from meterlog.model import About, Channel, Instrument, Limits, Origin, Quantity
from meterlog.model.errors import (
    DiskFailed,
    EvidenceError,
    LinkBusy,
    MeterlogError,
    RecordingExists,
)
from meterlog.profile import load_meter
from meterlog.recording import Recorder, Recording, find_unsealed, seal
from meterlog.work import Run

PROFILE = load_meter("line-logger")
FIRST = """
import sys, time
from pathlib import Path
from meterlog.acquire import MeterChoice
from meterlog.model import Limits
from meterlog.profile import load_meter
from meterlog.work import Run

profile = load_meter("line-logger")
choice = MeterChoice(profile, sys.argv[1], "meter", profile.channels)
run = Run([choice], Limits(), Path(sys.argv[2]))
run.start()
print("begun", flush=True)
sys.stdin.readline()
until = time.monotonic() + 60.0
while not run.status().rows["meter"] and time.monotonic() < until:
    time.sleep(0.01)
print(run.status().rows["meter"], run.status().faults, flush=True)
run.stop()
"""


@pytest.fixture
def first(tmp_path):
    """Another program that records from a pseudo terminal."""
    far, near = os.openpty()
    tty.setraw(near)
    stop = threading.Event()

    def send():
        while not stop.wait(0.01):
            os.write(far, b"12.4,0.5,6.00\n")

    sender = threading.Thread(target=send)
    sender.start()
    pipe = subprocess.PIPE
    command = [sys.executable, "-c", FIRST, os.ttyname(near), str(tmp_path / "run")]
    with subprocess.Popen(command, stdin=pipe, stdout=pipe, text=True) as program:
        assert program.stdout.readline() == "begun\n"
        yield os.ttyname(near), tmp_path / "run", program
    stop.set()
    sender.join()
    for handle in (far, near):
        os.close(handle)


def end(program):
    out, _ = program.communicate("\n", timeout=240)
    assert program.returncode == 0
    rows, faults = out.split(" ", 1)
    assert faults == "()\n"
    return int(rows)


@pytest.mark.pty
def test_a_port_that_another_program_records_from_is_said_to_be_busy(first, tmp_path):
    url, folder, program = first
    run = Run([MeterChoice(PROFILE, url, "meter", PROFILE.channels)], Limits(), tmp_path / "second")
    with pytest.raises(LinkBusy) as caught:
        run.start()
    assert url in str(caught.value)
    assert caught.value.remedy
    assert not (tmp_path / "second").exists()
    assert run.status().sleep == ""
    assert end(program) > 0
    assert Recording.open(folder).damage == ()


@pytest.mark.pty
def test_a_folder_that_another_program_records_into_is_left_alone(first, tmp_path):
    _, folder, program = first
    with pytest.raises(RecordingExists):
        Recorder.create(folder, About("id", datetime.now(UTC), 0, 0, "t", Origin.MEASURED, ()))
    with pytest.raises(EvidenceError, match="is being recorded or sealed by a running program"):
        seal(folder)
    assert find_unsealed(tmp_path) == ()
    assert not Recording.open(folder).is_ended  # but it can be looked at
    assert end(program) > 0
    assert Recording.open(folder).state == "sealed"


def test_of_many_that_begin_in_one_folder_at_once_one_has_it(tmp_path):
    one = Instrument("m", "p", "x", (Channel("u", Quantity.VOLTAGE),))
    about = About("id", datetime.now(UTC), 0, 0, "t", Origin.MEASURED, (one,))

    def begin(folder):
        try:
            return Recorder.create(folder, about)
        except MeterlogError as error:
            return error

    with ThreadPoolExecutor(8) as pool:
        for number in range(20):
            got = list(pool.map(begin, [tmp_path / f"run-{number}"] * 8))
            recorders = [one for one in got if isinstance(one, Recorder)]
            assert len(recorders) == 1
            assert {type(one) for one in got} == {Recorder, RecordingExists}
            recorders[0].close()
            assert Recording.open(tmp_path / f"run-{number}").damage == ()


@pytest.mark.parametrize("error", [30, 13, 28, 116])
def test_a_folder_that_cannot_be_written_is_a_clear_error_before_anything_is_begun(
    tmp_path, monkeypatch, error
):
    real = os.mkdir

    def mkdir(path, *args, **options):
        if str(path).startswith(str(tmp_path)):
            raise OSError(error, os.strerror(error))
        real(path, *args, **options)

    monkeypatch.setattr(os, "mkdir", mkdir)
    about = About("id", datetime.now(UTC), 0, 0, "t", Origin.MEASURED, ())
    with pytest.raises(DiskFailed, match=f"can't be made: {os.strerror(error)}") as caught:
        Recorder.create(tmp_path / "stick" / "run", about)
    assert str(tmp_path / "stick" / "run") in str(caught.value)
    assert caught.value.remedy
