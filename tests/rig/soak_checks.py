"""What a soak has left on the disk, held against what was sent."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

import numpy as np
from soak_sender import SECOND, Pace, dead_stretches, line_of

from meterlog.model import EventKind, FindingKind
from meterlog.recording import Envelope, Recording
from meterlog.work.review import review_folder

_PIXELS = 2_000
_MARKS = (EventKind.SPEED, EventKind.TAP)
_MOST_OFF_INTERVALS = 2.0
_LEARNT_S = 600.0
_LEAST_DRIFT_H = 6.0
_MOST_DRIFT_INTERVALS = 0.25
"""From begin to end; a virtual clock that steps from reading to reading tells no better."""


@dataclass
class Checked:
    """What was found.

    Attributes
    ----------
    wrong : list of str
        Empty when all held.
    figures : dict
    """

    wrong: list[str] = field(default_factory=list)
    figures: dict[str, object] = field(default_factory=dict)


def check_recording(folder: Path, pace: Pace, sent: list[int], marks: int) -> Checked:
    """Count every reading, event and envelope cell, and look for a drift of the times."""
    checked = Checked()
    recording = Recording.open(folder)
    checked.wrong += [f"not whole: {words}" for words in recording.damage]
    counts, offs, drifts = [], [], []
    for meter in range(pace.meters):
        t_ns, values = _readings(recording, f"meter-{meter + 1}")
        counts.append(len(t_ns))
        checked.wrong += _counted(pace, meter, sent[meter], values)
        if len(t_ns) == sent[meter] == pace.readings:
            off_s, drift = _times(pace, meter, t_ns)
            offs.append(off_s)
            drifts.append(drift)
        checked.wrong += _envelope(t_ns, values, f"meter-{meter + 1}")
    found = sum(event.kind in _MARKS for event in recording.events)
    if found != marks:
        checked.wrong.append(f"{marks} marks were made, {found} are there")
    checked.wrong += [
        f"{event.kind}: {event.value}"
        for event in recording.events
        if event.kind in {EventKind.FAULT, EventKind.REFUSED, EventKind.LINK}
    ][:10]
    whole_s = pace.hours * 3600.0
    # In an hour or two the learning of the pace weighs more than any drift.
    if pace.hours >= _LEAST_DRIFT_H and any(
        abs(one) * whole_s > _MOST_DRIFT_INTERVALS * pace.interval_s for one in drifts
    ):
        checked.wrong.append("times drift")
    if any(one > _MOST_OFF_INTERVALS * pace.interval_s for one in offs):
        checked.wrong.append("times are off by more than two intervals")
    checked.figures = {
        "sent": sent,
        "recorded": counts,
        "largest_time_error_s": offs,
        "drift_s_per_s": drifts,
        "events": len(recording.events),
        "bytes": sum(one.stat().st_size for one in folder.rglob("*") if one.is_file()),
    }
    _dead(folder, pace, checked)
    return checked


def _readings(recording: Recording, key: str) -> tuple[np.ndarray, np.ndarray]:
    blocks = list(recording.blocks(key))
    t_ns = np.concatenate([block.t_ns for block in blocks])
    values = np.concatenate([block.values for block in blocks])
    real = np.isfinite(values).any(axis=1)
    return t_ns[real], values[real]


def _counted(pace: Pace, meter: int, sent: int, values: np.ndarray) -> list[str]:
    """Compare value by value with what was sent."""
    lines = b"".join(line_of(pace, meter, number) for number in range(sent))
    wanted = np.array(lines.replace(b"\n", b",")[:-1].split(b","), dtype=float).reshape(-1, 3)
    if values.shape != wanted.shape:
        return [f"meter {meter + 1}: {sent} readings were sent, {len(values)} are there"]
    differ = int(np.count_nonzero((values != wanted).any(axis=1)))
    return [f"meter {meter + 1}: {differ} readings are others than were sent"] if differ else []


def _times(pace: Pace, meter: int, t_ns: np.ndarray) -> tuple[float, float]:
    """Give the largest distance from when it was sent, less its median, and its trend.

    The trend begins once the pace has been learnt, which takes some minutes.
    """
    due = np.array([pace.at_ns(meter, number) for number in range(len(t_ns))])
    off_s = (t_ns - due) / SECOND
    due_s = due / SECOND
    late = due_s >= _LEARNT_S
    centred = due_s[late] - due_s[late].mean()
    slope = float(centred @ (off_s[late] - off_s[late].mean()) / (centred @ centred))
    return float(np.abs(off_s - np.median(off_s)).max()), slope


def _envelope(t_ns: np.ndarray, values: np.ndarray, name: str) -> list[str]:
    """Compare the envelope of the whole with least and greatest of the readings themselves."""
    wrong = []
    edges = np.ceil(np.linspace(int(t_ns[0]), int(t_ns[-1]) + 1, _PIXELS + 1)).astype(np.int64)
    places = np.searchsorted(t_ns, edges)
    used = np.flatnonzero(np.diff(places) > 0)
    for column in range(values.shape[1]):
        built = Envelope()
        for start in range(0, len(t_ns), 997):
            built.append(t_ns[start : start + 997], values[start : start + 997, column])
        got = built.query(int(t_ns[0]), int(t_ns[-1]) + 1, _PIXELS)
        low = np.minimum.reduceat(values[:, column], places[:-1][used])
        high = np.maximum.reduceat(values[:, column], places[:-1][used])
        if not (np.array_equal(got.low[used], low) and np.array_equal(got.high[used], high)):
            wrong.append(f"{name}: the envelope of column {column} is not that of the readings")
    return wrong


def _dead(folder: Path, pace: Pace, checked: Checked) -> None:
    _, review = review_folder(folder)
    found = sum(one.kind is FindingKind.DEAD for one in review.findings)
    wanted = dead_stretches(pace)
    checked.figures["dead_stretches"] = [wanted, found]
    if found != wanted:
        checked.wrong.append(f"the motor stood still {wanted} times, {found} were found")
