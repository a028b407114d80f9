"""A recorder that is killed while a meter sends: what it had fetched is there, and nothing else."""

from __future__ import annotations

import itertools
import os
import random
import select
import signal
import time
import tty
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from devices import line_of, row

from meterlog.acquire import MeterChoice
from meterlog.evidence import verify_folder
from meterlog.model import EventKind, Limits
from meterlog.profile import load_meter
from meterlog.recording import Recording, find_unsealed, layout, seal
from meterlog.work import Run

PROFILE = load_meter("line-logger")
LONGEST_S = 30.0


@dataclass(frozen=True)
class Lost:
    """What a kill cost, milliseconds.

    Attributes
    ----------
    readings, raw : float
        How long before the kill the first was sent that is missing among the readings, and among
        the bytes as they came; 0 where none is.
    stall : float
        The longest that the sender beside it, which sleeps 2 ms at a time, was kept from sending:
        how far this machine kept anybody from working.
    """

    readings: float = 0.0
    raw: float = 0.0
    stall: float = 0.0


def record(url: str, folder: Path, tell: int) -> None:
    """Record until killed; a mark about every 0.2 s. Says by one byte that it has begun."""
    run = Run([MeterChoice(PROFILE, url, "meter", PROFILE.channels)], Limits(), folder)
    run.start()
    os.write(tell, b".")
    for number in itertools.count():
        run.mark(EventKind.NOTE, str(number))
        time.sleep(0.2)


def killed_recording(place: Path, dice: random.Random) -> tuple[list[str], Lost]:
    """Record in a second process, kill it, and look at what is left.

    Parameters
    ----------
    place : Path
        Empty.
    dice : random.Random

    Returns
    -------
    wrong : list of str
    lost : Lost
    """
    far, near = os.openpty()
    tty.setraw(near)
    url, folder = os.ttyname(near), place / "run"
    heard, tell = os.pipe()
    child = os.fork()
    if child == 0:
        try:
            record(url, folder, tell)
        finally:
            os._exit(1)
    os.close(tell)
    try:
        sent_s = _send_until(far, heard, dice)
    finally:
        killed_s = time.monotonic()
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
        for handle in (far, near, heard):
            os.close(handle)
    return _left(folder, sent_s, killed_s)


def _send_until(far: int, heard: int, dice: random.Random) -> list[float]:
    """Send readings until it is time to kill; give when each was sent."""
    if dice.random() < 0.1:  # while it begins
        time.sleep(dice.uniform(0.0, 0.1))
        return []
    ready, _, _ = select.select([heard], [], [], LONGEST_S)
    if not ready or not os.read(heard, 1):
        raise AssertionError("the recorder did not begin")
    os.write(far, b"\n")  # ends the line that was joined in its middle
    until, sent_s = time.monotonic() + dice.uniform(0.0, 0.4), []
    while time.monotonic() < until:
        lot = range(len(sent_s), len(sent_s) + dice.randint(1, 4))
        os.write(far, b"".join(map(line_of, lot)))
        sent_s += [time.monotonic()] * len(lot)
        time.sleep(0.002)
    return sent_s


def _left(folder: Path, sent_s: list[float], killed_s: float) -> tuple[list[str], Lost]:
    if not layout.holds_recording(folder):
        return (["no recording, though it had begun"] if sent_s else []), Lost()
    recording = Recording.open(folder)
    wrong = []
    values = [block.values for block in recording.blocks("meter")]
    flat = np.concatenate(values) if values else np.empty((0, 3))
    found = flat[np.isfinite(flat).any(axis=1)]
    if [tuple(one) for one in found.tolist()] != [row(number) for number in range(len(found))]:
        wrong.append("what is there is not the beginning of what was sent")
    if len(found) > len(sent_s):
        wrong.append("more is there than was sent")
    notes = [event.value for event in recording.events if event.kind is EventKind.NOTE]
    if notes != [str(number) for number in range(len(notes))]:
        wrong.append(f"marks {notes[-3:]}")
    if recording.is_ended:
        wrong.append("said to have been ended")
    bad = [text for text in recording.check() if "torn" not in text and "missing" not in text]
    wrong += [f"damage: {text}" for text in bad]
    if folder not in find_unsealed(folder.parent):
        wrong.append("not offered for recovery")
    seal(folder, recovered=True)
    if not verify_folder(folder).intact or Recording.open(folder).state != "recovered":
        wrong.append("its seal does not hold")
    raw = b"".join(one.data for one in recording.raw("meter"))
    if not b"".join([b"\n", *map(line_of, range(len(sent_s)))]).startswith(raw):
        wrong.append("the bytes are not those that were sent")
    ends = [*sent_s, killed_s]
    stalls = [later - earlier for earlier, later in itertools.pairwise(ends)]
    return wrong, Lost(
        (killed_s - ends[min(len(found), len(sent_s))]) * 1e3,
        (killed_s - ends[max(raw.count(b"\n") - 1, 0)]) * 1e3,
        max(stalls, default=0.0) * 1e3,
    )
