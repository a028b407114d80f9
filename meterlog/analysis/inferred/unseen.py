"""Unseen: everything that readings tell although no single one shows it, in one follower."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from meterlog.analysis.inferred.beat_note import beat_note
from meterlog.analysis.inferred.pulse_watch import PulseWatch
from meterlog.analysis.inferred.range_blanks import RangeBlanks
from meterlog.analysis.inferred.rhythm import rhythm
from meterlog.analysis.inferred.short_opens import ShortOpens
from meterlog.analysis.inferred.withdrawn import in_order
from meterlog.analysis.inferred.without_pulses import without_pulses
from meterlog.analysis.judged import Judged
from meterlog.analysis.labels import Stretch
from meterlog.analysis.rows import Rows
from meterlog.analysis.visibility import dip_note
from meterlog.model import (
    Block,
    Event,
    Finding,
    Inferred,
    Instrument,
    Limits,
    PulsedFeed,
    Rhythm,
    Span,
    StartUp,
)


@dataclass(frozen=True, slots=True)
class UnseenFound:
    """What was found.

    Attributes
    ----------
    spans : tuple of Span
        Those given, less what was no dropout.
    findings : tuple of Finding
        Those given, less those of such spans, with those of opens that were not seen.
    inferred : tuple of Inferred
    pulsed : tuple of PulsedFeed
    rhythm : Rhythm or None
    notes : tuple of str
    """

    spans: tuple[Span, ...]
    findings: tuple[Finding, ...]
    inferred: tuple[Inferred, ...]
    pulsed: tuple[PulsedFeed, ...]
    rhythm: Rhythm | None
    notes: tuple[str, ...]


class Unseen:
    """A follower; see :class:`meterlog.analysis.judged.Follower`.

    Parameters
    ----------
    instruments : sequence of Instrument
    limits : Limits
    """

    def __init__(self, instruments: Sequence[Instrument], limits: Limits) -> None:
        self._blanks = RangeBlanks(instruments)
        self._pulses = PulseWatch(instruments, limits.open_current_a)
        self._opens = ShortOpens(instruments, limits)

    def take(self, item: Block | Event) -> None:
        """Take the next Block or Event, as it came."""
        self._blanks.take(item)

    def take_rows(self, rows: Rows, stretches: Sequence[Stretch]) -> None:
        """Take rows side by side with the stretches that cover them."""
        self._pulses.take_rows(rows, stretches)
        self._opens.take_rows(rows, stretches)

    def found(self, judged: Judged, startups: Sequence[StartUp] = ()) -> UnseenFound:
        """Give what no single reading shows.

        Parameters
        ----------
        judged : Judged
        startups : sequence of StartUp
            Of the recording, to scale restart peaks by.
        """
        pulsed = self._pulses.pulsed(judged)
        shown = self._blanks.withdrawn(judged.spans, judged.findings, judged)
        left = without_pulses(shown.spans, shown.findings, pulsed)
        judged = replace(judged, spans=left.spans, findings=left.findings)
        opens = self._opens.found(judged, pulsed, startups)
        notes = list(opens.notes)
        if shown.count:
            notes.append(
                f"{shown.count} short zero(s) of the current came with a change of the measuring"
                f" range and are not taken for dropouts."
            )
        if left.count:
            notes.append(
                f"{left.count} short stretch(es) were the pulses of a pulsed feed and are not"
                f" taken for dropouts."
            )
        notes += beat_note(left.spans, pulsed, judged.limits, self._opens.channel)
        if self._opens.meter is not None and self._opens.channel is not None:
            notes += dip_note(self._opens.channel, judged.steps)
        return UnseenFound(
            spans=left.spans,
            findings=in_order(left.findings, opens.findings),
            inferred=opens.inferred,
            pulsed=pulsed,
            rhythm=rhythm(judged),
            notes=tuple(notes),
        )
