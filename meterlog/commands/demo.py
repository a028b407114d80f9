"""``meterlog demo``: the whole job on the virtual bench."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.folders import new_folder
from meterlog.commands.screen import add_language, has_screen, paint_without_screen
from meterlog.commands.terminal import Progress, answer, answer_json, remark, short

if TYPE_CHECKING:
    from meterlog.model import Event
    from meterlog.work import Run
    from meterlog.work.demo import DemoPlan, DemoResult

_WORDS = """\
A virtual fan circuit with a fault is recorded through real serial links by two virtual meters,
then the same circuit with a new motor; both are judged and compared, and the evidence is written:
the judgement, tables and a picture of each trace. Everything in it is simulated and all names are
invented.

With a screen the window opens on the running bench; without one, or with --headless, the job is
done in the terminal. 'meterlog virtual --list' names the scenarios."""

_EXAMPLES = """\
meterlog demo --headless
meterlog demo --headless --scenario feed-lost --seconds 20 --out recordings/feed-lost"""

_GUIDE = (
    "The virtual bench is running: an invented vehicle with a faulty fan ({title}). The readings "
    "come through a real serial link, as from a real meter.",
    "The bench works through its own script: off, then its speeds, and taps on the motor. Watch "
    "the big digits, and the ribbon under the trace.",
    "Current that falls to nothing while the voltage stays across the motor is a dead segment: the "
    "supply is there and the motor takes nothing. A feed or ground that goes away looks different.",
    "Your keys work too: 0 to 9 command a speed as the knob would, + taps the motor, W marks that "
    "you moved the leads, - takes a note.",
    "When you have seen enough: Enter twice stops and seals this recording.",
    "Then Enter once more: the new motor is fitted and recorded. Stop that one too.",
    "B shows before and after, K makes a claim pack of an invented job. Close the window when you "
    "have seen enough: both are judged and compared, and the evidence is written.",
)


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(subparsers, "demo", _WORDS, _EXAMPLES)
    parser.add_argument("--headless", action="store_true", help="no window, even with a screen")
    parser.add_argument(
        "--scenario", metavar="NAME", default="dead-spot", help="the fault (default: dead-spot)"
    )
    parser.add_argument(
        "--seconds",
        metavar="N",
        type=float,
        default=24.0,
        help="length of each of the two recordings (default: 24)",
    )
    parser.add_argument("--seed", metavar="N", type=int, default=1, help="equal seeds, equal fault")
    parser.add_argument(
        "--out", metavar="DIR", type=Path, help="new or empty folder (default: named after now)"
    )
    add_language(parser)
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Do the demo, in the window or without."""
    from meterlog.commands.virtual import known_scenario
    from meterlog.model.errors import UsageError

    # First of all: what the demo is done with takes seconds to load.
    known_scenario(options.scenario)
    from meterlog.profile.full_path import rooted
    from meterlog.work import fresh_folder
    from meterlog.work.demo import DemoPlan

    if not 1.0 <= options.seconds <= 3600.0:
        raise UsageError(
            "is no length for a demo.", subject=str(options.seconds), remedy="Expected 1 to 3600."
        )
    if options.seed < 0:
        raise UsageError("is below 0.", subject="--seed", remedy="Expected 0 or more.")
    # From the root: its second recording begins long after it was given.
    out = (
        rooted(new_folder(options.out)) if options.out else fresh_folder(f"demo-{options.scenario}")
    )
    plan = DemoPlan(options.scenario, options.seconds, out, options.seed)
    if has_screen() and not (options.headless or options.json):
        from meterlog.commands.qt_refusal import qt_started

        with qt_started():  # before the benches run
            return _in_window(plan, options.language)
    return _headless(plan, as_json=options.json)


def _headless(plan: DemoPlan, *, as_json: bool) -> int:
    from meterlog.commands.stop_signals import StopSignals
    from meterlog.work.demo import run_demo

    paint_without_screen()
    remark(f"demo: scenario {plan.scenario}, two recordings of {plan.seconds:g} s; Ctrl-C ends it")
    progress = Progress("demo")
    with StopSignals() as stop:
        try:
            result = run_demo(plan, stop.wait, progress.bar)
        finally:
            progress.done()
    if as_json:
        answer_json(_as_json(result))
    else:
        _tell(result)
    return 0


def _tell(result: DemoResult) -> None:
    answer(result.text)
    answer(f"\nFindings:   {short(result.evidence / 'findings.txt')}")
    if result.comparison is not None:
        answer(f"Compared:   {short(result.evidence / 'comparison.txt')}")
    for part in result.parts:
        answer(f"{part.folder.name}:".ljust(12) + f"recording {short(part.folder)}")
        answer(" " * 12 + f"judgement {short(part.evidence / 'judgement.txt')}")
        answer(" " * 12 + f"tables    {short(part.evidence)}")
        picture = part.no_picture or f"picture   {short(part.evidence / 'trace.png')}"
        answer(" " * 12 + picture)
    if result.circuit_folder is not None:
        answer("circuit:    recording " + short(result.circuit_folder))
        answer(" " * 12 + f"verdict   {short(result.evidence / 'circuit' / 'circuit.txt')}")
    if result.stopped:
        remark("stopped before its time; what was recorded is sealed.")


def _as_json(result: DemoResult) -> dict[str, object]:
    from meterlog.evidence import review_to_dict
    from meterlog.evidence.comparison_json import comparison_to_dict

    compared = result.comparison
    return {
        "evidence": str(result.evidence),
        "stopped": result.stopped,
        "comparison": None if compared is None else comparison_to_dict(compared),
        "circuit": None if result.circuit is None else result.circuit.to_dict(),
        "recordings": [
            {
                "title": part.title,
                "folder": str(part.folder),
                "evidence": str(part.evidence),
                "files": [path.name for path in part.files],
                **review_to_dict(part.review),
            }
            for part in result.parts
        ],
    }


def _in_window(plan: DemoPlan, language: str | None) -> int:
    from meterlog.commands.window_signals import closed_by_signals
    from meterlog.window import open_window
    from meterlog.work.demo import AFTER, DemoBench, judge_part, sum_up
    from meterlog.work.demo_job import demo_job_folder

    benches = [DemoBench(plan.scenario, plan.seed, plan.out / "before")]

    def by_hand(event: Event) -> None:
        benches[-1].obey(event.kind, event.value)

    def new_motor() -> Run:
        benches[-1].close("stopped")
        benches.append(DemoBench(AFTER, plan.seed, plan.out / "after"))
        return benches[-1].run

    job = demo_job_folder(plan.out, benches[0].card)
    guide = [words.format(title=benches[0].card.title) for words in _GUIDE]
    try:
        with closed_by_signals():
            code = open_window(
                benches[0].run,
                on_mark=by_hand,
                guide=guide,
                next_run=new_motor,
                job=job,
                language=language,
            )
    finally:
        for bench in benches:
            bench.close("stopped")
    evidence = plan.out / "evidence"
    parts = [
        judge_part(
            f"{bench.run.folder.name}: {bench.card.title}",
            bench.run.folder,
            evidence / bench.run.folder.name,
        )
        for bench in benches
    ]
    _tell(sum_up(parts, evidence, plan, stopped=False))
    answer(f"See a recording again: meterlog window {short(benches[0].run.folder)}")
    return code
