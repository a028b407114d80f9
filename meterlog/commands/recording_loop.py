"""What the record command does while the readers are at work, and what it says afterwards."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.commands.silence_told import SilenceTold
from meterlog.commands.stop_signals import StopSignals
from meterlog.commands.sweeper import Sweeper
from meterlog.commands.terminal import Progress, answer, answer_json, remark, short
from meterlog.commands.typed_keys import KEYS, READING, UNDO, ZERO, TypedKeys, mark_of, reading_of
from meterlog.commands.warnings_told import WarningsTold
from meterlog.commands.zeros_taken import ZerosTaken
from meterlog.model import Role
from meterlog.model.errors import UsageError
from meterlog.recording import MovingRecorder
from meterlog.work import Run, RunStatus, Schedule, parse_reading, reading_words
from meterlog.work.typed_reading import beyond_words

_IDLE_S = 0.05
_SCHEDULED_S = 0.004
"""Short against the 20 ms by which scheduled events go ahead of the rows."""


def watch(
    run: Run,
    schedule: Schedule,
    seconds: float | None,
    stop: StopSignals,
    zeros: Sequence[Role] = (),
) -> str:
    """Keep a started run going.

    Parameters
    ----------
    run : Run
    schedule : Schedule
        Events to be put into the recording at their times.
    seconds : float or None
        Stop this long after the readers began; None: when somebody stops it.
    stop : StopSignals
    zeros : sequence of Role
        Their zeros are taken first.

    Returns
    -------
    str
        The outcome: ``complete``, or ``stopped`` by the user.
    """
    keys, progress, sweeper = TypedKeys(), Progress("recording"), Sweeper()
    remark(f"recording to {short(run.folder)}; Ctrl-C ends it" + (f"; {KEYS}" if keys.open else ""))
    _say_what_is_typed(run, keys)
    begun_ns = run.now_ns()
    taking, warnings, silence = ZerosTaken(run, zeros), WarningsTold(), SilenceTold()
    told = ""
    outcome = "stopped"
    try:
        while not stop.wait(_SCHEDULED_S if len(schedule) else _IDLE_S):
            now_ns = run.now_ns()
            for event in schedule.due(now_ns):
                run.mark(event.kind, event.value, event.t_ns)
            if not _obey(run, keys, progress, taking):
                break
            taking.go_on(progress)
            warnings.tell(run, progress, zeroing=taking.busy)
            silence.tell(run.status(), progress)
            told = _show(run, progress, told)
            sweeper.sweep_when_due()
            if seconds is not None and now_ns - begun_ns >= seconds * 1e9:
                outcome = "complete"
                break
    finally:
        progress.done()
    return outcome


def _say_what_is_typed(run: Run, keys: TypedKeys) -> None:
    typed = [instrument.key for instrument in run.instruments if instrument.typed]
    if not typed:
        return
    how = READING if keys.open else "there is no terminal to type on: it gets no reading"
    remark(f"typed by hand: {', '.join(typed)}; {how}")


def _type_reading(run: Run, words: str) -> None:
    """Put a typed reading into the recording, and say what was taken."""
    try:
        instrument, values = parse_reading(words, run.instruments)
        run.type_reading(instrument.key, values)
    except UsageError as error:
        remark(f"not taken: {error}")
    else:
        remark(f"taken at {run.now_ns() / 1e9:.1f} s: {reading_words(instrument, values)}")
        doubt = beyond_words(instrument, values, run.limits.nominal_v)
        if doubt:
            remark(doubt)


def _undo(run: Run) -> None:
    """Take the last mark back, and say which."""
    try:
        mark, _ = run.undo_mark()
    except UsageError as error:
        remark(str(error))
    else:
        words = f"{mark.kind} {mark.value}".strip()
        remark(f"withdrawn: {words} at {mark.t_ns / 1e9:.1f} s; it is kept and does not count")


def _obey(run: Run, keys: TypedKeys, progress: Progress, zeros: ZerosTaken) -> bool:
    """Mark what was typed; tell whether to go on."""
    for line in keys.lines():
        progress.done()
        if line == "q":
            return False
        if line == ZERO:
            zeros.ask(Role.MOTOR_CURRENT)
            continue
        if line == UNDO:
            _undo(run)
            continue
        reading = reading_of(line)
        if reading is not None:
            _type_reading(run, reading)
            continue
        mark = mark_of(line)
        if mark is None:
            remark(f"{line!r} is no mark: {KEYS}")
            continue
        try:
            run.mark(*mark)
        except UsageError as error:
            remark(str(error))
    return True


def _show(run: Run, progress: Progress, told: str) -> str:
    """Show how it goes; say once when nothing is being kept any more."""
    if not progress.is_due():
        return told
    status = run.status()
    progress.note(_line(status))
    words = f"NOTHING IS BEING KEPT: {status.failed}" if status.failed else ""
    words = words or (f"THE DISK FAILED: {status.moved}" if status.moved else "")
    if words and words != told:
        progress.done()
        remark(words)
    return words


def _line(status: RunStatus) -> str:
    rows = sum(status.rows.values())
    text = f"{status.elapsed_s:6.1f} s  {rows:,} rows"
    if status.refused:
        text += f"  {status.refused} refused"
    if status.lost_rows:
        text += f"  {status.lost_rows:,} ROWS LOST"
    if status.lost:
        text += f"  {status.lost} bytes lost"
    if status.falls_behind:
        text += f"  THE DISK DOES NOT KEEP UP: {status.waiting:,} pieces wait"
    typed = [meter for meter in status.meters if meter.typed]
    messages = [f"{meter.key}: {meter.readings} typed by hand" for meter in typed]
    messages += [f"{meter.key}: {meter.message}" for meter in status.meters if meter.message]
    return text + ("  " + "; ".join(messages) if messages else "")


def silent_meters(run: Run) -> tuple[str, ...]:
    """Give, for each meter that gives no readings now, its key and what is known."""
    return tuple(
        f"{meter.key}: {meter.message or 'no reading has come'}"
        for meter in run.status().meters
        if not meter.alive
    )


def report(run: Run, outcome: str, silent: tuple[str, ...], *, as_json: bool) -> None:
    """Say where the recording is and what is in it."""
    status = run.status()
    if as_json:
        answer_json(
            {
                "folder": str(run.folder),
                "outcome": outcome,
                "origin": run.about.origin.value if run.about else "",
                "elapsed_s": status.elapsed_s,
                "rows": dict(status.rows),
                "refused": {meter.key: meter.refused for meter in status.meters},
                "lost_rows": status.lost_rows,
                "lost_bytes": {meter.key: meter.lost for meter in status.meters},
                "repeated": {meter.key: meter.repeated for meter in status.meters},
                "typed_by_hand": [meter.key for meter in status.meters if meter.typed],
                "events": status.marks,
                "warnings": list(status.warnings),
                "silent_at_end": list(silent),
                "moved": status.moved,
                "faults": list(status.faults),
            }
        )
    else:
        _summary(run, outcome, status)
    for words in silent:
        remark(f"silent at the end: {words}")
    for fault in status.faults:
        # Why it goes on elsewhere, and what became of that, has been said.
        if not (status.moved and fault.startswith(MovingRecorder.__name__)):
            remark(f"fault: {fault}")


def _summary(run: Run, outcome: str, status: RunStatus) -> None:
    answer(f"{outcome}: {status.elapsed_s:.1f} s recorded and sealed in {short(run.folder)}")
    for meter in status.meters:
        typed = ", typed by hand" if meter.typed else ""
        refused = f", {meter.refused} lines refused" if meter.refused else ""
        refused += f", {meter.lost} bytes lost on the line" if meter.lost else ""
        again = f", {meter.repeated} repeats passed over" if meter.repeated else ""
        answer(f"  {meter.key}: {status.rows.get(meter.key, 0):,} rows{typed}{refused}{again}")
    answer(f"  {status.marks} marks")
    if status.moved:
        answer(f"  {status.moved}")
