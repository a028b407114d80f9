"""``meterlog doctor``: whether this computer is fit to measure with, in one report to paste."""

from __future__ import annotations

import argparse
import time
from collections.abc import Sequence
from typing import TYPE_CHECKING

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.terminal import answer, answer_json, remark, table

if TYPE_CHECKING:
    from meterlog.work.doctor import Line

_WORDS = """\
Looks at what is installed, ports and rights, disks, clock, sleep, profiles, settings, the signing
key, screen and sound; then records a fault of the virtual bench through real ports and tells
whether it was found, and nothing else. Takes some ten seconds. Opens no port, changes nothing.

Each line says ok, look (works in part: somebody should look at it) or bad, and what to do. The
report can be pasted as it stands: no user's name, no vehicle, no job, no serial number, no key.
Exit code 1 when a line says look or bad."""

_EXAMPLES = """\
meterlog doctor
meterlog doctor --json --without-bench"""


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(subparsers, "doctor", _WORDS, _EXAMPLES)
    parser.add_argument(
        "--without-bench", action="store_true", help="leave out the self-test on the virtual bench"
    )
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Look at everything; 1 when something needs attention."""
    from meterlog.commands.doctor_screen import look_at_screen
    from meterlog.work.doctor import State, look_at_all, worst

    if not options.without_bench:
        remark("looking, and recording the virtual bench: some ten seconds")
    begun = time.monotonic()
    lines = look_at_all({"screen": look_at_screen}, bench=not options.without_bench)
    took_s = time.monotonic() - begun
    state = worst(lines)
    if options.json:
        answer_json(
            {
                "state": state.value,
                "took_s": round(took_s, 2),
                "lines": [
                    {"about": one.about, "state": one.state.value, "words": one.words, "do": one.do}
                    for one in lines
                ],
            }
        )
    else:
        answer(_report(lines, took_s))
    return 0 if state is State.OK else 1


def _report(lines: Sequence[Line], took_s: float) -> str:
    from meterlog.work.doctor import State

    rows = []
    for one in lines:
        rows.append((one.state.value, one.about, one.words))
        if one.do:
            rows.append(("", "", f"-> {one.do}"))
    counts = [(sum(one.state is state for one in lines), state) for state in State]
    said = ", ".join(f"{count} {state.value}" for count, state in counts)
    return f"{table(('state', 'about', 'what'), rows)}\n\n{said}; {took_s:.1f} s."
