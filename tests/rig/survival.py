"""Record from a device that misbehaves beside one that does not; check what is on the disk.

    python tests/rig/survival.py [--runs N] [--seed S]

runs other seeds than the test suite does, and prints what was seen.
"""

from __future__ import annotations

import argparse
import itertools
import statistics
import sys
import tempfile
import time
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np
from devices import Device, SteadyLogger, WildLogger, WildScpi, row
from plugs import PtyPlug, TcpPlug

from meterlog.acquire import MeterChoice
from meterlog.model import EventKind, Limits
from meterlog.profile import MeterProfile, ScpiTalk, load_meter
from meterlog.recording import Recording
from meterlog.work import Run

KINDS = ("lines on a pty", "lines on tcp", "scpi on a pty", "scpi on tcp")
_LINES = load_meter("line-logger")
_SCPI = replace(
    _LINES,
    name="wild-scpi",
    dialect="scpi",
    scpi=ScpiTalk(query="READ?", poll_s=0.004, answer_s=1.0, ask_errors=True),
)


@dataclass(frozen=True)
class Outcome:
    """What one run showed.

    Attributes
    ----------
    wrong : list of str
        What did not hold; empty when all did.
    readings, steady : int
        Recorded of the wild and of the steady device.
    returns_s : list of float
        From a plug put in again to the next reading.
    troubles : dict
    """

    wrong: list[str]
    readings: int
    steady: int
    returns_s: list[float]
    troubles: dict[str, int]


def survive(kind: str, seed: int, place: Path, turns: int = 150) -> Outcome:
    """Make one recording and compare it with what was sent.

    Parameters
    ----------
    kind : str
        One of KINDS.
    seed : int
    place : Path
        An empty folder.
    turns : int
        Readings of the wild device, sent or not.
    """
    wild_plug = TcpPlug() if kind.endswith("tcp") else PtyPlug(place / "wild")
    steady_plug = PtyPlug(place / "steady")
    scpi = kind.startswith("scpi")
    wild = (WildScpi if scpi else WildLogger)(wild_plug, seed, turns)
    steady = SteadyLogger(steady_plug, seed, 0)
    choices = [
        _choice(_SCPI if scpi else _LINES, wild_plug.url, "wild"),
        _choice(_LINES, steady_plug.url, "steady"),
    ]
    run = Run(choices, Limits(), place / "recording")
    try:
        _record(run, wild, steady, scpi=scpi)
    finally:
        run.stop()
        wild_plug.close()
        steady_plug.close()
    return _compare(Recording.open(run.folder), wild, steady)


def _choice(profile: MeterProfile, url: str, key: str) -> MeterChoice:
    return MeterChoice(profile, url, key, profile.channels)


def _record(run: Run, wild: Device, steady: Device, *, scpi: bool) -> None:
    if scpi:
        wild.begin()  # it has to answer while it is opened
    run.start()
    if not scpi:
        wild._plug.send(b"\n")  # ends the line that was joined in its middle
        wild.begin()
    steady._plug.send(b"\n")
    steady.begin()
    wild.join()
    steady.stop.set()
    steady.join()
    wanted = {"wild": len(wild.sent.intact), "steady": len(steady.sent.intact)}
    until = time.monotonic() + 10.0
    while time.monotonic() < until:
        read = {meter.key: meter.readings for meter in run.status().meters}
        if all(read[key] >= count for key, count in wanted.items()):
            return
        time.sleep(0.01)


def _compare(recording: Recording, wild: Device, steady: Device) -> Outcome:
    wrong: list[str] = []
    numbers = {}
    for key, device in (("wild", wild), ("steady", steady)):
        t_ns, values = _readings(recording, key)
        numbers[key] = (t_ns, values[:, 0].astype(int))
        wrong += [f"{key}: {words}" for words in _faults(t_ns, values, device)]
    t_ns, found = numbers["wild"]
    zero_ns = recording.about.zero_ns
    returns_s = []
    for plugged_ns in wild.sent.plugged_ns:
        later = t_ns[t_ns + zero_ns > plugged_ns]
        if len(later):
            returns_s.append((int(later[0]) + zero_ns - plugged_ns) / 1e9)
    lost = [e for e in recording.events if e.kind is EventKind.LINK and e.value.startswith("lost")]
    if wild.sent.plugged_ns and not lost:  # two soon after each other are one loss
        wrong.append("unplugged, but nobody said so")
    if any(event.source == "steady" for event in lost):
        wrong.append("the steady meter is said to have been lost")
    return Outcome(wrong, len(found), len(numbers["steady"][1]), returns_s, wild.sent.troubles)


def _readings(recording: Recording, key: str) -> tuple[np.ndarray, np.ndarray]:
    blocks = list(recording.blocks(key))
    t_ns = np.concatenate([block.t_ns for block in blocks])
    values = np.concatenate([block.values for block in blocks])
    if np.any(np.diff(t_ns) < 0):
        raise AssertionError(f"{key}: time runs backwards")
    real = np.isfinite(values).any(axis=1)
    return t_ns[real], values[real]


def _faults(t_ns: np.ndarray, values: np.ndarray, device: Device) -> list[str]:
    sent = device.sent
    found = [int(number) for number in values[:, 0]]
    wrong = []
    missing = sorted(set(sent.intact) - set(found))
    if missing:
        wrong.append(f"sent intact, but not recorded: {missing[:10]} ({len(missing)})")
    invented = sorted(set(found) - set(sent.intact) - sent.unsure)
    if invented:
        wrong.append(f"recorded, but never sent intact: {invented[:10]}")
    if any(later <= earlier for earlier, later in itertools.pairwise(found)):
        wrong.append("not in order, or not once")
    if not all(tuple(value) == row(number) for value, number in zip(values, found, strict=True)):
        wrong.append("values were mixed up")
    return wrong


def main() -> int:
    """Run many seeds; 1 when one did not hold."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--runs", type=int, default=20)
    parser.add_argument("--seed", type=int, default=1_000)
    options = parser.parse_args()
    returns_s: list[float] = []
    readings = failures = 0
    troubles: dict[str, int] = {}
    for number in range(options.runs):
        kind, seed = KINDS[number % len(KINDS)], options.seed + number
        with tempfile.TemporaryDirectory() as place:
            outcome = survive(kind, seed, Path(place))
        returns_s += outcome.returns_s
        readings += outcome.readings + outcome.steady
        for trouble, count in outcome.troubles.items():
            troubles[trouble] = troubles.get(trouble, 0) + count
        if outcome.wrong:
            failures += 1
            print(f"seed {seed}, {kind}: {'; '.join(outcome.wrong)}", flush=True)
    print(f"{options.runs} runs, {failures} failed, {readings} readings, troubles {troubles}")
    if returns_s:
        print(
            f"{len(returns_s)} returns: median {statistics.median(returns_s):.3f} s, "
            f"longest {max(returns_s):.3f} s"
        )
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
