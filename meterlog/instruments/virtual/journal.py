"""Journal: what the virtual bench tells about itself, and the files it keeps."""

from __future__ import annotations

import dataclasses
import json
from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import datetime, timedelta
from pathlib import Path

from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.scenario import INVENTED
from meterlog.instruments.virtual.script import Happening, script_csv
from meterlog.instruments.virtual.trouble import Trouble
from meterlog.instruments.virtual.truth import TruthSpan
from meterlog.model.errors import UsageError


def write_whole(path: Path, text: str) -> None:
    """Write a file so that a reader finds the old text or the new, never a part.

    Raises
    ------
    UsageError
        If it can't be written there.
    """
    part = path.with_name(f".{path.name}.part")
    try:
        part.write_text(text, encoding="utf-8", newline="")
        part.replace(path)
    except OSError as error:
        raise UsageError(
            f"can't be written: {error.strerror}.",
            subject=str(path),
            remedy="Choose a folder that exists and can be written to.",
        ) from error


class Journal:
    """Tells every happening as one JSON line, and keeps the truth on disk.

    Parameters
    ----------
    play : Play
    tell : callable
        Takes one line of text.
    speedup : float
    truth : Path or None
    events : Path or None
    meters : sequence of mapping
        What there is to know about each meter, for the truth file.
    """

    def __init__(
        self,
        play: Play,
        tell: Callable[[str], None],
        speedup: float = 1.0,
        truth: Path | None = None,
        events: Path | None = None,
        meters: Sequence[Mapping[str, object]] = (),
    ) -> None:
        self._play = play
        self._tell = tell
        self._speedup = speedup
        self._truth = truth
        self._events = events
        self._meters = [dict(meter) for meter in meters]
        self._news: list[Trouble] = []
        self._zero_utc: datetime | None = None
        self._zero_ns = 0
        self._told = 0
        self._spans = 0

    def begin(self, script: Iterable[Happening]) -> None:
        """Write both files for the first time, which also shows that they can be written."""
        if self._events is not None:
            write_whole(self._events, script_csv(script))
        self.keep_truth(complete=False)

    def open(self, zero_ns: int, zero_utc: datetime) -> None:
        """Note the scenario's zero: monotonic clock in nanoseconds, and wall time."""
        self._zero_ns = zero_ns
        self._zero_utc = zero_utc
        self.line("open", self._play.scenario.name, 0.0)

    def tell(self, news: Trouble) -> None:
        """Tell what happened to a meter, or what it did by itself, and keep it in the truth."""
        self._news.append(news)
        self.line(news.kind, news.value, news.elapsed_s, news.meter)
        self.keep_truth(complete=False)

    def line(self, kind: str, value: str, elapsed_s: float, meter: str = "") -> None:
        """Tell one thing; ``meter`` is named where it is one meter's."""
        if self._zero_utc is None:
            return
        since_s = elapsed_s / self._speedup
        said = {
            "elapsed_s": round(elapsed_s, 6),
            "kind": kind,
            **({"meter": meter} if meter else {}),
            "value": value,
            "utc": _utc(self._zero_utc + timedelta(seconds=since_s)),
            "monotonic_ns": self._zero_ns + round(since_s * 1e9),
        }
        self._tell(json.dumps(said, ensure_ascii=False))

    def follow(self) -> None:
        """Tell what has happened since the last call, and keep the truth."""
        for done in self._play.happened[self._told :]:
            self._told += 1
            self.line(done.kind.value, done.value, done.elapsed_s)
        if self._play.truth.begun == self._spans:
            return
        for span in self._play.spans()[self._spans :]:
            self._spans += 1
            self.line("truth", span.kind.value, span.start_s)
        self.keep_truth(complete=False)

    def keep_events(self, planned: Iterable[Happening]) -> None:
        """Write the events file anew: what was done by hand, and what the script still plans."""
        if self._events is not None:
            write_whole(self._events, script_csv((*self._play.happened, *planned)))

    def keep_truth(self, *, complete: bool) -> None:
        """Write the truth file anew."""
        if self._truth is None:
            return
        play = self._play
        zero = None if self._zero_utc is None else _utc(self._zero_utc)
        text = json.dumps(
            {
                "note": INVENTED,
                "scenario": play.scenario.name,
                "seed": play.seed,
                "vehicle": play.scenario.vehicle,
                "part": play.scenario.part,
                "speedup": self._speedup,
                "zero_utc": zero,
                "zero_monotonic_ns": self._zero_ns if zero else None,
                "complete": complete,
                "elapsed_s": round(play.elapsed_s, 6),
                "spans": [_span(span) for span in play.spans()],
                "happenings": [
                    {"elapsed_s": h.elapsed_s, "kind": h.kind.value, "value": h.value}
                    for h in play.happened
                ],
                "meters": self._meters,
                "meter_happenings": [
                    {**dataclasses.asdict(n), "elapsed_s": round(n.elapsed_s, 6)}
                    for n in self._news
                ],
                "circuit": _finite(dataclasses.asdict(play.figures)),
            },
            ensure_ascii=False,
            allow_nan=False,
            indent=1,
        )
        write_whole(self._truth, text + "\n")


def _utc(moment: datetime) -> str:
    return moment.isoformat(timespec="microseconds").replace("+00:00", "Z")


def _span(span: TruthSpan) -> dict[str, object]:
    return {
        "kind": span.kind.value,
        "start_s": round(span.start_s, 6),
        "end_s": round(span.end_s, 6),
    }


def _finite(value: object) -> object:
    # JSON knows no infinity: a step without a limit has null there.
    if isinstance(value, dict):
        return {key: _finite(item) for key, item in value.items()}
    if isinstance(value, (list, tuple)):
        return [_finite(item) for item in value]
    if isinstance(value, float) and value in {float("inf"), float("-inf")}:
        return None
    return value
