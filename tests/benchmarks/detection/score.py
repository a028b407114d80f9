"""Score: one run's review held against what really happened."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field

import numpy as np
from circuit import State
from scene import Scene
from story import Dropout
from verdict_check import Stated, stated, truly_over

from meterlog.analysis import Reviewer
from meterlog.model import Finding, FindingKind, Review, Span, SpanKind, Verdict

GONE = (
    SpanKind.DEAD,
    SpanKind.FEED_LOST,
    SpanKind.GROUND_LOST,
    SpanKind.NO_CURRENT,
    SpanKind.COMMAND_LOST,
)
EXCESS = (SpanKind.OVER, SpanKind.UNDER, SpanKind.LOCKED)
ELECTRIC_S = 0.003
"""A motor's current needs so long to come and go, whatever the contact does."""
EXPECTED = {
    State.MOTOR_OPEN: (SpanKind.DEAD, {"feed", "return"}),
    State.FEED_OPEN: (SpanKind.FEED_LOST, {"feed"}),
    State.GROUND_OPEN: (SpanKind.GROUND_LOST, {"return"}),
}
"""What each is called, and the voltages without which nobody can know."""


@dataclass
class Outcome:
    """What one run, or many, came to. Counts have plain names; ``problems`` are one line each."""

    counts: Counter[str] = field(default_factory=Counter)
    hours: float = 0.0
    stated: list[Stated] = field(default_factory=list)
    chances: list[tuple[float, bool]] = field(default_factory=list)
    problems: list[tuple[int, str]] = field(default_factory=list)

    def add(self, other: Outcome) -> None:
        """Take another outcome in."""
        self.counts += other.counts
        self.hours += other.hours
        self.stated += other.stated
        self.chances += other.chances
        self.problems += other.problems


def reviewed(scene: Scene) -> Review:
    """Give the program's review of the run, fed as it would have been."""
    reviewer = Reviewer([meter.instrument() for meter in scene.meters], scene.limits)
    for item in scene.items():
        reviewer.feed(item)
    return reviewer.finish()


class Scorer:
    """Scores one run."""

    def __init__(self, scene: Scene, review: Review) -> None:
        self.scene, self.review = scene, review
        self.meter, read = scene.amps
        column = self.meter.columns.index("current")
        good = np.isfinite(read.block.values[:, column])
        self.t = read.block.t_ns[good] / 1e9 - self.meter.offset_s
        self.out = Outcome(hours=scene.story.length / 3600.0)
        gone = GONE if scene.commanded else (*GONE, SpanKind.OFF)
        self.gone = [one for one in review.spans if one.kind in gone]
        self.reach = self.meter.interval + self.meter.window + ELECTRIC_S
        self.used: set[int] = set()

    def score(self) -> Outcome:
        """Give the outcome."""
        self.out.counts["runs"] += 1
        for dropout in self.scene.dropouts:
            self._dropout(dropout)
        self._alarms()
        self._inferred()
        self.out.stated = stated(self.scene, self.review)
        return self.out

    def _problem(self, words: str) -> None:
        self.out.problems.append((self.scene.seed, words))

    # -- what really happened: was it found? -----------------------------------------------------

    def _gaps(self) -> np.ndarray:
        """Give (n, 2): pauses without a reading of the current that count as missing data."""
        t = np.concatenate(([0.0], self.t, [self.scene.story.length]))
        wide = np.flatnonzero(np.diff(t) > 2.9 * self.meter.interval)
        return np.column_stack((t[wide], t[wide + 1]))

    def _readable_s(self, one: Dropout) -> float:
        """Give the longest part of a dropout that was not hidden by missing data."""
        edges = [one.start, one.end]
        for start, end in self._gaps():
            if start < one.end and end > one.start:
                edges += [max(start, one.start), min(end, one.end)]
        edges.sort()
        return max((b - a for a, b in zip(edges[::2], edges[1::2], strict=True)), default=0.0)

    def _dropout(self, one: Dropout) -> None:
        spans = [
            (index, span)
            for index, span in enumerate(self.gone)
            if span.start_ns / 1e9 < one.end + self.reach
            and span.end_ns / 1e9 > one.start - self.reach
        ]
        self.used |= {index for index, _ in spans}
        readable, shortest = self._readable_s(one), self.review.shortest_visible_dropout_s
        self._chance(one, readable, found=bool(spans))
        name = f"{one.state.value} {one.start:.3f}-{one.end:.3f} s ({one.length * 1e3:.4g} ms)"
        self.out.counts["dropouts"] += 1
        if shortest is not None and readable > shortest:
            self.out.counts["visible"] += 1
            self.out.counts["found"] += bool(spans)
            if not spans:
                self._problem(f"missed {name}, visible from {shortest * 1e3:.4g} ms")
        if spans:
            touching = [span for _, span in spans]
            self._kind(one, name, touching, readable)
            self._edges(one, name, touching)

    def _chance(self, one: Dropout, readable: float, *, found: bool) -> None:
        """Note the stated chance of a dropout too short to be seen for certain."""
        if readable < one.length * 0.999 or not self.meter.stated_window:
            return
        for told in self.review.catch_chances:
            if np.isclose(told.duration_s, one.length, rtol=1e-6):
                self.out.chances.append((told.chance, found))

    def _kind(self, one: Dropout, name: str, spans: list[Span], readable: float) -> None:
        kinds = {span.kind for span in spans}
        right, needed = EXPECTED[one.state]
        blamed = kinds - {right, SpanKind.NO_CURRENT, SpanKind.OFF}
        disturbed = self._loose_near(one)
        told = ", ".join(sorted(kind.value for kind in kinds))
        if not disturbed and self.scene.commanded:
            self.out.counts["blamed"] += 1
            self.out.counts["blamed wrongly"] += bool(blamed)
            if blamed:
                self._problem(f"{name} is told as {told}")
        if self.scene.commanded and not disturbed and self._telling(needed, one, readable):
            self.out.counts["tellable"] += 1
            self.out.counts["told"] += right in kinds and not blamed
            if right not in kinds and not blamed:
                self._problem(f"{name} is told as {told}, though the channels allow more")

    def _loose_near(self, one: Dropout) -> bool:
        return any(
            start < one.end + 0.5 and end > one.start - 1.0
            for meter in self.scene.meters
            for _, start, end, _ in meter.loose
        )

    def _telling(self, needed: set[str], one: Dropout, readable: float) -> bool:
        """Tell whether the voltages were there, and read while the current was gone."""
        if not needed <= self.scene.columns():
            return False
        enough = self.review.shortest_visible_dropout_s or np.inf
        for meter in self.scene.meters[1:]:
            widest = float(np.diff(self.scene.reads[1].block.t_ns).max()) / 1e9
            # One whole reading after the current went, and before it came back, for certain.
            enough = max(enough, 2.0 * widest + meter.window + self.reach + 4.0 * meter.offset_u_s)
        return min(readable, one.length) > enough

    def _edges(self, one: Dropout, name: str, spans: list[Span]) -> None:
        """Hold edges against the interval there and the averaging time; not beside missing data."""
        others = [o for o in self.scene.dropouts if o is not one]
        for truth, seen, word in (
            (one.start, min(span.start_ns for span in spans), "began"),
            (one.end, max(span.end_ns for span in spans), "ended"),
        ):
            shared = any(
                o.start < seen / 1e9 + self.reach and o.end > seen / 1e9 - self.reach
                for o in others
            )
            tolerance = self._tolerance(truth)
            if shared or tolerance is None:
                continue
            late = seen / 1e9 - self.meter.offset_s - truth
            self.out.counts["edges"] += 1
            self.out.counts["edges close"] += abs(late) <= tolerance
            if abs(late) > tolerance:
                self._problem(
                    f"{name} {word} {late * 1e3:+.4g} ms late, ± {tolerance * 1e3:.4g} ms allowed"
                )

    def _tolerance(self, at: float) -> float | None:
        """Give how well an edge can be known, seconds; None where readings are missing."""
        index = int(np.searchsorted(self.t, at))
        if index < 2 or index > len(self.t) - 3:
            return None
        apart = np.diff(self.t[index - 2 : index + 3])
        if (apart > 2.9 * self.meter.interval).any():
            return None
        return float(apart.max()) + self.meter.window + ELECTRIC_S

    # -- what was told: did it happen? -----------------------------------------------------------

    def _alarms(self) -> None:
        healthy = not self.scene.dropouts and not self.scene.near
        self.out.counts["healthy runs"] += healthy
        before = self.out.counts["false alarms"]
        for index, span in enumerate(self.gone):
            if index not in self.used and not self._unasked(span):
                self._alarm(span, f"{span.kind.value} told where nothing was lost")
        for span in self.review.spans:
            if span.kind in EXCESS and not self.scene.near:
                self._excess(span)
        for one in self.review.findings:
            if one.verdict is Verdict.FAIL and not self._known_kind(one):
                self._alarm(one, f"finding {one.kind.value}: {one.statement[:90]}")
        if healthy and self.out.counts["false alarms"] > before:
            self.out.counts["healthy condemned"] += 1

    def _unasked(self, span: Span) -> bool:
        """Tell whether the fan was off and nobody had recorded that: then it is no alarm."""
        if self.scene.commanded:
            return span.kind is SpanKind.OFF
        middle = (span.start_ns + span.end_ns) / 2e9
        return span.kind is SpanKind.OFF or self.scene.story.speed_at(middle) == 0

    def _slips(self, one: Finding) -> bool:
        """Tell whether a step fails for an excess that is counted by itself."""
        return one.kind is FindingKind.STEP_CURRENT and any(
            span.kind in EXCESS and one.start_ns <= span.start_ns < one.end_ns
            for span in self.review.spans
        )

    def _known_kind(self, one: Finding) -> bool:
        """Tell whether a finding is judged elsewhere: that of a span, or of a limit laid near."""
        spans = {kind.value for kind in (*GONE, *EXCESS)}
        near = self.scene.near and one.kind is FindingKind.STEP_CURRENT
        return one.kind.value in spans or near or self._slips(one) or self._true_excess(one)

    def _true_excess(self, one: Finding) -> bool:
        """Tell whether drag was told of true currents above the limits of two speeds and more.

        It is said of limits laid near the truth as of others, and true where the motor really drew
        more than they allow.
        """
        if one.kind is not FindingKind.DRAG:
            return False
        over = truly_over(self.scene, self.review)
        return len(over) > 1 and one.speed in over

    def _excess(self, span: Span) -> None:
        """Count an excess: limits are honest, so it is wrong; beside a dropout it is a slip."""
        start, end = span.start_ns / 1e9, span.end_ns / 1e9
        beside = any(
            start < one.end + self.reach and end > one.start - self.reach
            for one in self.scene.dropouts
        )
        if beside:
            self.out.counts["dropouts told as excess"] += 1
            self._problem(f"{span.kind.value} {start:.3f}-{end:.3f} s is part of a dropout")
            return
        self._alarm(span, f"{span.kind.value} told where the current was within its limits")

    def _alarm(self, what: Span | Finding, words: str) -> None:
        """Count a false alarm, or a doubtful one where the verdict is that it can't be told."""
        verdicts = [
            one.verdict
            for one in self.review.findings
            if one.kind.value == what.kind.value and one.start_ns == what.start_ns
        ]
        sure = Verdict.FAIL in verdicts or not verdicts
        self.out.counts["false alarms" if sure else "doubtful alarms"] += 1
        at = f"{what.start_ns / 1e9:.3f}-{what.end_ns / 1e9:.3f} s"
        self._problem(f"{'FALSE ALARM' if sure else 'doubtful'}: {words}, {at}")

    def _inferred(self) -> None:
        for one in self.review.inferred:
            start, end = one.start_ns / 1e9 - self.reach, one.end_ns / 1e9 + self.reach
            near = [d for d in self.scene.dropouts if d.start < end and d.end > start]
            self.out.counts["inferred"] += 1
            if not near:
                self.out.counts["inferred from nothing"] += 1
                self._problem(f"inferred {one.kind.value} {start:.3f}-{end:.3f} s from nothing")
                continue
            length = sum(d.length for d in near)
            self.out.counts["inferred lengths"] += 1
            self.out.counts["inferred lengths right"] += one.open_s[0] <= length <= one.open_s[1]


def score(scene: Scene) -> Outcome:
    """Review one run and score it."""
    return Scorer(scene, reviewed(scene)).score()
