"""SelfTest: a fault of the virtual bench, recorded through real ports, must be found, no other."""

from __future__ import annotations

import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

from meterlog.model import Review, SpanKind, Verdict
from meterlog.model.errors import DiskFailed, MeterlogError
from meterlog.recording import Recording
from meterlog.work.demo import DemoBench
from meterlog.work.doctor.disks import TOO_LITTLE_BYTES
from meterlog.work.doctor.look import Line, State, shown_place, told_of
from meterlog.work.review import review_folder
from meterlog.work.run_status import disk_free

SCENARIO = "dead-spot"
SECONDS = 4.0
"""With seed 1 the motor is switched on at 2.0 s, and stands on its dead bar until 3.6 s."""
_SEED = 1
_LEAST_PART = 0.5
"""Of the readings that the meters' own pace promises."""
_FROM_S, _TO_S, _SLACK_S = 2.0, 3.6, 0.5
_NO_ROOM = "Free some space there, or set TMPDIR to another folder, and look again."
_SEND = "Send this report to whoever keeps meterlog; measure nothing that counts until then."


def look_at_bench() -> Iterator[Line]:
    """Record some seconds of the virtual bench, judge them, and hold them against its truth."""
    begun = time.monotonic()
    try:
        with tempfile.TemporaryDirectory(prefix="meterlog-doctor-") as place:
            folder = Path(place) / "run"
            # Never elsewhere: what is recorded for a look must not stay among the user's own.
            bench = DemoBench(SCENARIO, _SEED, folder, places=lambda: ())
            try:
                time.sleep(SECONDS)
            finally:
                bench.close()
            recording, review = review_folder(folder)
            wrong = faults(recording, review)
    except (OSError, MeterlogError) as error:
        yield _not_recorded(error)
        return
    took = f"({time.monotonic() - begun:.1f} s)"
    if wrong:
        yield Line("self-test", State.BAD, f"{'; '.join(wrong)} {took}", _SEND)
        return
    words = "recorded through real ports, sealed, judged: the dead segment was found, nothing else"
    yield Line("self-test", State.OK, f"{words} {took}")


def _not_recorded(error: OSError | MeterlogError) -> Line:
    """Say why; that the test itself found no room tells nothing of measuring."""
    folder = Path(tempfile.gettempdir())
    free = disk_free(folder)
    if isinstance(error, (OSError, DiskFailed)) and 0 <= free < TOO_LITTLE_BYTES:
        where = shown_place(folder)
        words = f"could not be done: its recording goes to {where}, {free / 1e6:.1f} MB free there"
        return Line("self-test", State.LOOK, words, _NO_ROOM)
    words = f"the virtual bench can't be recorded: {told_of(error)}"
    return Line("self-test", State.BAD, words, _SEND)


def faults(recording: Recording, review: Review) -> list[str]:
    """Give what is not as the virtual bench did it; empty when all is.

    Parameters
    ----------
    recording : Recording
    review : Review
        Of it.
    """
    wrong = [
        f"only {recording.rows(one.key)} readings came of {one.key}"
        for one in recording.about.instruments
        if recording.rows(one.key)
        < _LEAST_PART * recording.end_ns / 1e9 / one.channels[0].interval_s
    ]
    if recording.state != "sealed" or recording.damage:
        wrong.append("the recording is not whole and sealed")
    told = [span for span in review.spans if span.kind.is_fault]
    dead = [span for span in told if span.kind is SpanKind.DEAD]
    if not any(
        abs(span.start_ns / 1e9 - _FROM_S) < _SLACK_S and abs(span.end_ns / 1e9 - _TO_S) < _SLACK_S
        for span in dead
    ):
        wrong.append("the dead segment of the virtual motor was not found")
    others = sorted({span.kind.value for span in told} - {SpanKind.DEAD.value})
    if others:
        wrong.append(f"found what is not there: {', '.join(others)}")
    failed = {finding.kind for finding in review.findings if finding.verdict is Verdict.FAIL}
    if failed != {SpanKind.DEAD.value}:
        wrong.append(f"findings that failed: {', '.join(sorted(map(str, failed))) or 'none'}")
    return wrong
