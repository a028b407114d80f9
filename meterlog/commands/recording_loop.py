"""What the record command does while the readers are at work, and what it says afterwards."""

from __future__ import annotations

from meterlog.commands.stop_signals import StopSignals
from meterlog.commands.terminal import Progress, answer, answer_json, remark, short
from meterlog.commands.typed_keys import KEYS, TypedKeys, mark_of
from meterlog.model.errors import UsageError
from meterlog.work import Run, RunStatus, Schedule

_IDLE_S = 0.05
_SCHEDULED_S = 0.004
"""Short against the 20 ms by which scheduled events go ahead of the rows."""


def watch(run: Run, schedule: Schedule, seconds: float | None, stop: StopSignals) -> str:
    """Keep a started run going.

    Parameters
    ----------
    run : Run
    schedule : Schedule
        Events to be put into the recording at their times.
    seconds : float or None
        Stop this long after the readers began; None: when somebody stops it.
    stop : StopSignals

    Returns
    -------
    str
        The outcome: ``complete``, or ``stopped`` by the user.
    """
    keys, progress = TypedKeys(), Progress("recording")
    remark(f"recording to {short(run.folder)}; Ctrl-C ends it" + (f"; {KEYS}" if keys.open else ""))
    begun_ns = run.now_ns()
    told = ""
    outcome = "stopped"
    try:
        while not stop.wait(_SCHEDULED_S if len(schedule) else _IDLE_S):
            now_ns = run.now_ns()
            for event in schedule.due(now_ns):
                run.mark(event.kind, event.value, event.t_ns)
            if not _obey(run, keys):
                break
            told = _show(run, progress, told)
            if seconds is not None and now_ns - begun_ns >= seconds * 1e9:
                outcome = "complete"
                break
    finally:
        progress.done()
    return outcome


def _obey(run: Run, keys: TypedKeys) -> bool:
    """Mark what was typed; tell whether to go on."""
    for line in keys.lines():
        if line == "q":
            return False
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
    if status.failed and status.failed != told:
        progress.done()
        remark(f"NOTHING IS BEING KEPT: {status.failed}")
    return status.failed


def _line(status: RunStatus) -> str:
    rows = sum(status.rows.values())
    text = f"{status.elapsed_s:6.1f} s  {rows:,} rows"
    if status.refused:
        text += f"  {status.refused} refused"
    messages = [f"{meter.key}: {meter.message}" for meter in status.meters if meter.message]
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
                "events": status.marks,
                "silent_at_end": list(silent),
                "faults": list(status.faults),
            }
        )
    else:
        _summary(run, outcome, status)
    for words in silent:
        remark(f"silent at the end: {words}")
    for fault in status.faults:
        remark(f"fault: {fault}")


def _summary(run: Run, outcome: str, status: RunStatus) -> None:
    answer(f"{outcome}: {status.elapsed_s:.1f} s recorded and sealed in {short(run.folder)}")
    for meter in status.meters:
        refused = f", {meter.refused} lines refused" if meter.refused else ""
        answer(f"  {meter.key}: {status.rows.get(meter.key, 0):,} rows{refused}")
    answer(f"  {status.marks} marks")
