"""A real disk runs full or is taken out while a meter sends: it goes on elsewhere, all is kept.

The disks are memory, mounted where only a child process sees them; that takes rights that not
every machine gives.
"""

import json
import shutil
import subprocess
import sys

import pytest

from meterlog.evidence import verify_folder
from meterlog.model import EventKind
from meterlog.recording import Recording

CHILD = """
import json, os, shutil, subprocess, sys, threading, time, tty
from pathlib import Path
from meterlog.acquire import MeterChoice
from meterlog.model import EventKind, Limits
from meterlog.model.errors import MeterlogError
from meterlog.profile import load_meter
from meterlog.work import Run

how, from_it, place = sys.argv[1], sys.argv[2] == "from it", Path(sys.argv[3])
stick = place / "stick"
stick.mkdir()
mount = ["mount", "-t", "tmpfs", "-o", "size=200k", "tmpfs", str(stick)]
if subprocess.run(mount, capture_output=True).returncode:
    print("no rights")
    sys.exit()
os.environ["METERLOG_ELSEWHERE"] = str(place / "elsewhere")
far, near = os.openpty()
tty.setraw(near)
profile = load_meter("line-logger")
if from_it:
    os.chdir(stick)
folder = Path("run") if from_it else stick / "run"
run = Run([MeterChoice(profile, os.ttyname(near), "meter", profile.channels)], Limits(), folder)
run.start()
sent, stop = 0, threading.Event()

def send():
    global sent
    os.write(far, b"\\n")
    while not stop.wait(0.002):
        lot = range(sent, sent + 20 if how == "full" else sent + 2)
        os.write(far, b"".join(b"%d,%.3f,%d\\n" % (n, n / 8, n % 7) for n in lot))
        sent = lot.stop

sender = threading.Thread(target=send)
sender.start()
run.mark(EventKind.SPEED, "3")
time.sleep(0.3)
if how == "pulled":
    subprocess.run(["umount", "-l", str(stick)], check=True, cwd="/")
if how == "removed":
    shutil.rmtree(stick / "run")
    subprocess.run(["umount", "-l", str(stick)], check=True, cwd="/")
    stick.rmdir()
until = time.monotonic() + 60
while not run.status().moved and time.monotonic() < until:
    time.sleep(0.02)
live = run.status()
run.mark(EventKind.TAP)
time.sleep(0.3)
stop.set()
sender.join()
while sum(m.readings for m in run.status().meters) < sent and time.monotonic() < until:
    time.sleep(0.02)
told = run.status()
try:
    folder = run.stop()
    error = ""
except MeterlogError as trouble:
    folder, error = run.folder, str(trouble)
after = run.status()
if how == "full":
    subprocess.run(["cp", "-a", str(stick / "run"), str(place / "left")], check=True)
print(json.dumps({
    "sent": sent, "moved": live.moved, "failed": live.failed, "recording": live.recording,
    "faults": told.faults, "folder": str(folder), "error": error, "after": after.moved,
    "rows": dict(after.rows), "lost": after.lost_rows,
}))
"""


def recorded_to(how, place, out="from the root"):
    if sys.platform != "linux" or shutil.which("unshare") is None:
        pytest.skip("needs mounts of one's own")
    done = subprocess.run(
        ["unshare", "-m", "--propagation", "private", sys.executable, "-c", CHILD, how, out, place],
        capture_output=True,
        text=True,
        timeout=240,
        check=False,
    )
    if "no rights" in done.stdout or "unshare failed" in done.stderr:
        pytest.skip("needs the right to mount")
    assert done.stderr == ""
    return json.loads(done.stdout)


def numbers(folder):
    """Give the first channel of all readings, which counts them."""
    recording = Recording.open(folder)
    values = [value for block in recording.blocks("meter") for value in block.values.tolist()]
    found = [row for row in values if row[0] == row[0]]
    assert all(row == [row[0], row[0] / 8, row[0] % 7] for row in found)
    return [int(row[0]) for row in found]


@pytest.mark.pty
def test_a_disk_runs_full(tmp_path):
    said = recorded_to("full", tmp_path)
    elsewhere = tmp_path / "elsewhere"
    assert "No space left on device" in said["moved"]
    assert f"The recording goes on in {elsewhere / 'run-goes-on-1'}" in said["moved"]
    assert (said["failed"], said["error"], said["lost"]) == ("", "", 0)
    assert said["recording"]
    assert "goes on in" in said["faults"][0]
    # put together at once, where there is room
    assert said["folder"] == str(elsewhere / "run-whole")
    assert said["after"].endswith(f"The whole of it is in {elsewhere / 'run-whole'}.")
    assert numbers(elsewhere / "run-whole") == list(range(said["sent"]))
    assert verify_folder(elsewhere / "run-whole").intact
    events = Recording.open(elsewhere / "run-whole").events
    kinds = [event.kind for event in events if event.kind in {EventKind.SPEED, EventKind.TAP}]
    assert kinds == [EventKind.SPEED, EventKind.TAP]
    # what the full disk has is the beginning of it
    first = numbers(tmp_path / "left")
    assert first == list(range(len(first)))


@pytest.mark.pty
@pytest.mark.parametrize(
    ("how", "out"),
    [("pulled", "from the root"), ("pulled", "from it"), ("removed", "from it")],
)
def test_a_stick_is_pulled_out(tmp_path, how, out):
    said = recorded_to(how, tmp_path, out)
    spill = tmp_path / "elsewhere" / "run-goes-on-1"
    assert ("was removed" if how == "removed" else "its disk was taken out") in said["moved"]
    assert (said["failed"], said["error"], said["lost"]) == ("", "", 0)
    # the part on the stick is gone with it; this one says so, and can be reviewed
    assert said["folder"] == str(spill)
    assert f"meterlog join {spill}" in said["after"]
    assert verify_folder(spill).intact
    found = numbers(spill)
    assert found == list(range(found[0], said["sent"]))
    assert [one.value for one in Recording.open(spill).events if one.kind is EventKind.SPEED] == [
        "3"
    ]
