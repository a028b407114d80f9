"""The demo job: the bad motor and the new one recorded, judged and compared, the evidence written.

Everything goes the way of a real job: real links to meters in other processes, the recorder, the
reviewer, the export. Only the meters and the fan are virtual. Names are invented.
"""

from __future__ import annotations

import threading
from collections.abc import Callable, Sequence
from contextlib import ExitStack
from dataclasses import dataclass
from pathlib import Path

from meterlog.evidence.circuit_files import JudgedCheck
from meterlog.model import Comparison, Conditions, EventKind, Job, Origin, Review
from meterlog.model.errors import RecordingExists
from meterlog.profile import load_limits
from meterlog.recording.spill_places import spill_places
from meterlog.work.bench_process import BenchProcess, scenario_card
from meterlog.work.compare import CompareRequest, compare_folders
from meterlog.work.comparison_files import write_comparison
from meterlog.work.demo_circuit import check_circuit
from meterlog.work.demo_text import findings_text, summary_text
from meterlog.work.evidence_folder import write_evidence
from meterlog.work.review import review_folder
from meterlog.work.run import Run
from meterlog.work.wiring import Wiring, choose_meters

LIMITS = "linear-12v"
AFTER = "healthy-new"

METERS = ("line-logger", "bench-scpi")
PROBES = ("--probe", "bench-scpi.volts=battery")
ROLES = (
    "motor-feed=line-logger.feed",
    "motor-return=line-logger.return",
    "motor-current=line-logger.current",
    "battery=bench-scpi.volts",
)

Wait = Callable[[float], bool]
"""Waits that many seconds, or until somebody wants to stop; tells whether somebody does."""

Progress = Callable[[float, str], None]
"""Told the part done, 0 to 1, and what is going on."""


@dataclass(frozen=True, slots=True)
class DemoPlan:
    """What the demo shall do.

    Attributes
    ----------
    scenario : str
        Of the virtual bench, for the old motor; the new one is ``healthy-new``.
    seconds : float, seconds
        Length of each of the two recordings.
    out : Path
        Absent or empty.
    seed : int
        Equal seeds give equal faults.
    """

    scenario: str
    seconds: float
    out: Path
    seed: int = 1


@dataclass(frozen=True, slots=True)
class DemoPart:
    """One of the two recordings, judged.

    Attributes
    ----------
    title : str
    folder : Path
        The sealed recording.
    evidence : Path
        Folder of its tables and picture.
    files : tuple of Path
    review : Review
    no_picture : str
        Why there is no picture; empty when there is one.
    """

    title: str
    folder: Path
    evidence: Path
    files: tuple[Path, ...]
    review: Review
    no_picture: str


@dataclass(frozen=True, slots=True)
class DemoResult:
    """What came of the demo.

    Attributes
    ----------
    parts : tuple of DemoPart
        The old motor, and the new one unless somebody stopped it before.
    evidence : Path
        The folder with both, and ``findings.txt``; with two parts also ``comparison.txt`` and
        ``comparison.json``.
    text : str
        The verdicts and the comparison in short; ``findings.txt`` says more.
    comparison : Comparison or None
        New against old; None with one part.
    stopped : bool
        Somebody ended it before its time; what there was is sealed and judged all the same.
    circuit : JudgedCheck or None
        The check of the circuit, which found the bad part; None where there was none.
    circuit_folder : Path or None
        Its recording.
    """

    parts: tuple[DemoPart, ...]
    evidence: Path
    text: str
    comparison: Comparison | None
    stopped: bool
    circuit: JudgedCheck | None = None
    circuit_folder: Path | None = None


def demo_job(vehicle: str, part: str) -> Job:
    """Give an invented job card."""
    return Job(
        work_order="DEMO-0001",
        vehicle=vehicle,
        odometer="not stated",
        complaint="Fan stops by itself and runs again when hit. (invented)",
        part=part,
        technician="nobody (virtual bench)",
        conditions="virtual bench; no real vehicle, part or person",
        measured_under=Conditions(
            engine="off",
            filter="new",
            air="face",
            intake="fresh",
            housing="closed",
            place="vehicle",
            windows="closed",
            control="manual",
            ambient_c=20.0,
            running_min=0.0,
        ),
    )


class DemoBench:
    """Two virtual meters on one virtual fan circuit, and a run that records them.

    Parameters
    ----------
    scenario : str
    seed : int
    folder : Path
    places : callable
        Gives the folders to try, best first, should the disk fail.

    Raises
    ------
    UsageError
        If there is no such scenario.
    LinkNotFound
        If the virtual bench does not start.
    """

    def __init__(
        self,
        scenario: str,
        seed: int,
        folder: Path,
        places: Callable[[], Sequence[Path]] = spill_places,
    ) -> None:
        self._ends = ExitStack()
        self._early: list[tuple[EventKind, str, int]] | None = []
        self._lock = threading.Lock()
        try:
            # The card is asked for while it starts, which takes a second.
            self._bench = self._ends.enter_context(
                BenchProcess(METERS, scenario, seed, self._happened, PROBES)
            )
            self.card = scenario_card(scenario)
            addresses = self._bench.addresses()
            meters = tuple(f"{name}@{addresses[name]}" for name in METERS)
            choices = choose_meters(Wiring(meters, ROLES))
            job = demo_job(self.card.vehicle, self.card.part)
            self.run = Run(choices, load_limits(LIMITS), folder, job, Origin.SIMULATED)
            self.run.places = places
            self.run.start()
            self._catch_up()
        except BaseException:
            self._ends.close()
            raise

    def _happened(self, kind: EventKind, value: str, monotonic_ns: int) -> None:
        # The scenario begins when its port is opened, which is before the recording does.
        with self._lock:
            if self._early is not None:
                self._early.append((kind, value, monotonic_ns))
                return
        self._mark(kind, value, monotonic_ns)

    def _catch_up(self) -> None:
        with self._lock:
            early, self._early = self._early or [], None
            for kind, value, monotonic_ns in early:
                self._mark(kind, value, monotonic_ns)

    def _mark(self, kind: EventKind, value: str, monotonic_ns: int) -> None:
        if self.run.is_running and self.run.about is not None:
            self.run.mark(kind, value, max(monotonic_ns - self.run.about.zero_ns, 0))

    def obey(self, kind: EventKind, value: str) -> None:
        """Do to the virtual fan what the technician just did."""
        self._bench.obey(kind, value)

    def close(self, outcome: str = "complete") -> None:
        """Seal the recording and end the virtual meters, whatever happens."""
        try:
            self.run.stop(outcome)
        finally:
            self._ends.close()


def _record(bench: DemoBench, seconds: float, wait: Wait, tell: Callable[[float], None]) -> bool:
    stopped = False
    try:
        begun_ns = bench.run.now_ns()
        while not stopped:
            done = (bench.run.now_ns() - begun_ns) / 1e9 / seconds
            tell(min(done, 1.0))
            if done >= 1.0:
                break
            stopped = wait(0.05)
    finally:
        bench.close("stopped" if stopped else "complete")
    return stopped


def judge_part(title: str, folder: Path, evidence: Path) -> DemoPart:
    """Judge one sealed recording of the demo and write its evidence.

    Raises
    ------
    RecordingUnreadable
        If there is no recording in ``folder``.
    EvidenceError
        If ``evidence`` can't be written.
    """
    recording, review = review_folder(folder)
    files, no_picture = write_evidence(recording, review, evidence, lambda _: None)
    return DemoPart(title, folder, evidence, files, review, no_picture)


def run_demo(plan: DemoPlan, wait: Wait, progress: Progress) -> DemoResult:
    """Do the whole job on the virtual bench.

    Parameters
    ----------
    plan : DemoPlan
    wait : callable
    progress : callable

    Returns
    -------
    DemoResult

    Raises
    ------
    RecordingExists
        If ``plan.out`` holds something.
    MeterlogError
        If the bench, the recording or the evidence fails.
    """
    if plan.out.exists() and any(plan.out.iterdir()):
        raise RecordingExists(
            "is there already.", subject=str(plan.out), remedy="Choose another folder with --out."
        )
    evidence = plan.out / "evidence"
    parts: list[DemoPart] = []
    stopped = False
    for index, (name, scenario) in enumerate((("before", plan.scenario), ("after", AFTER))):
        progress(index / 2, f"{name}: starting the virtual bench")
        bench = DemoBench(scenario, plan.seed, plan.out / name)

        def tell(done: float, at: int = index, what: str = name) -> None:
            progress((at + 0.95 * done) / 2, f"recording {what}")

        stopped = _record(bench, plan.seconds, wait, tell)
        progress((index + 0.95) / 2, f"judging {name}")
        parts.append(judge_part(f"{name}: {bench.card.title}", plan.out / name, evidence / name))
        if stopped:
            break
    progress(0.97, "checking the circuit")
    return sum_up(parts, evidence, plan, stopped=stopped)


def sum_up(parts: list[DemoPart], evidence: Path, plan: DemoPlan, *, stopped: bool) -> DemoResult:
    """Check the circuit, compare the parts and write ``findings.txt`` beside their evidence.

    Parameters
    ----------
    parts : list of DemoPart
        The old motor, and the new one if it was recorded.
    evidence : Path
        The folder with the evidence of the parts.
    plan : DemoPlan
    stopped : bool
        Nothing more is measured then.

    Returns
    -------
    DemoResult

    Raises
    ------
    EvidenceError
        If the comparison can't be written.
    """
    check, folder = None, plan.out / "circuit"
    if not stopped:
        card = scenario_card(plan.scenario)
        job = demo_job(card.vehicle, card.part)
        check = check_circuit(plan.scenario, folder, job, plan.seed)
    if check is not None:
        write_evidence(*review_folder(folder), evidence / "circuit", lambda _: None)
    comparison = None
    if len(parts) == 2:
        old, new = (part.folder for part in parts)
        comparison = compare_folders(CompareRequest(old=(old,), new=new))
        write_comparison(comparison, evidence)
    told = [(part.title, part.review) for part in parts]
    words = findings_text(told, comparison, check)
    (evidence / "findings.txt").write_text(words + "\n", encoding="utf-8")
    text = summary_text(told, comparison, check)
    at = None if check is None else folder
    return DemoResult(tuple(parts), evidence, text, comparison, stopped, check, at)
