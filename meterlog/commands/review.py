"""``meterlog review``: judge a recording."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.folders import recording_at
from meterlog.commands.terminal import Progress, answer, answer_json, line_width, named, remark

if TYPE_CHECKING:
    from meterlog.evidence.circuit_files import JudgedCheck
    from meterlog.model import Limits, Review
    from meterlog.recording import Recording

_WORDS = """\
Gives the spans (running, dead, feed lost, ground lost ...), the figures of each speed step, and
the findings with value, uncertainty, limit and verdict. Without --limits the recording is judged
by the limits it was made with.

Exit code 0 when the review was made, whatever it found; with --fail-on-findings 1 when a finding
failed."""

_EXAMPLES = """\
meterlog review recordings/before
meterlog review recordings/before --limits linear-12v --json"""


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(subparsers, "review", _WORDS, _EXAMPLES)
    parser.add_argument("folder", metavar="DIR", type=Path, help="the recording's folder")
    parser.add_argument("--limits", metavar="NAME|FILE", help="judge by these limits instead")
    parser.add_argument(
        "--budgets", action="store_true", help="show what each uncertainty is made of"
    )
    parser.add_argument(
        "--accept-steps",
        action="store_true",
        help="where no speed was recorded: take the steps found in the current, numbered by its"
        " order, for the commanded speeds",
    )
    add_as_recorded(parser)
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    parser.add_argument(
        "--fail-on-findings", action="store_true", help="exit with 1 when a finding failed"
    )
    parser.set_defaults(run=run)


def add_as_recorded(parser: argparse.ArgumentParser) -> None:
    """Add the option that leaves out the edits that ``meterlog amend`` made."""
    parser.add_argument(
        "--as-recorded",
        action="store_true",
        help='leave out the edits that "meterlog amend" made on top of a recording',
    )


def review_with_progress(
    folder: Path,
    limits_name: str | None,
    *,
    accept_steps: bool = False,
    as_recorded: bool = False,
) -> tuple[Recording, Review, Limits | None]:
    """Review ``folder`` by named limits, showing progress.

    Returns
    -------
    tuple of Recording, Review, and Limits or None
        None: judged by the limits of the recording itself.
    """
    from meterlog.profile import load_limits
    from meterlog.work import review_folder
    from meterlog.work.amended import Amending

    amending = Amending(applied=not as_recorded)
    limits = load_limits(limits_name) if limits_name is not None else None
    recording_at(folder)
    progress = Progress("reviewing")
    try:
        recording, review = review_folder(
            folder, limits, progress, accept_steps=accept_steps, amending=amending
        )
    finally:
        progress.done()
    return recording, review, limits


def shortcomings(recording: Recording) -> list[str]:
    """Give what a reader must know before trusting the findings: one line each, none if whole."""
    from meterlog.recording import layout
    from meterlog.work.wholeness import part_lines

    lines = [f"NOT WHOLE: {text}" for text in recording.damage]
    if any(".arrows:" in text for text in recording.damage):
        lines.append("The findings rest on the readings that are left.")
    if any(text.startswith(layout.EVENTS) for text in recording.damage):
        lines.append("Speeds, taps and notes may be missing: the findings rest on those left.")
    if recording.state == "unsealed":
        lines.append("NOT SEALED: the recording was never ended, or is still being made.")
    lines += part_lines(recording.folder)
    if recording.state == "recovered":
        lines.append("RECOVERED: it was sealed after the program that recorded it had died.")
    return lines


def edits_on_top(review: Review) -> list[str]:
    """Give what a reader must know of edits before the rest: one line each, none without edits."""
    from meterlog.work.amended import edits_told, parted

    edits, damage = parted(edits_told(review))
    lines = [f"EDITS NOT WHOLE: {text}" for text in damage]
    if edits:
        many = "1 edit" if len(edits) == 1 else f"{len(edits)} edits"
        lines.append(f"EDITED: {many} on top of the recording; the notes say each.")
    return lines


def typed_meters(recording: Recording) -> list[str]:
    """Give the keys of the instruments whose readings were typed by hand."""
    return [one.key for one in recording.about.instruments if one.typed]


def _circuit_checks(recording: Recording) -> tuple[tuple[JudgedCheck, ...], tuple[str, ...]]:
    """Judge the circuit checks that a recording holds; nothing is loaded where there are none."""
    from meterlog.model import EventKind

    if not any(event.kind is EventKind.CIRCUIT for event in recording.events):
        return (), ()
    from meterlog.work.circuit_checks import judged_checks

    return judged_checks(recording)


def run(options: argparse.Namespace) -> int:
    """Review a folder."""
    from meterlog.evidence import judgement_text, review_to_dict
    from meterlog.evidence.sensors_text import sensors_to_list
    from meterlog.evidence.times_text import times_to_list
    from meterlog.model import Verdict

    recording, review, limits = review_with_progress(
        options.folder,
        options.limits,
        accept_steps=options.accept_steps,
        as_recorded=options.as_recorded,
    )
    about = recording.about
    checks, unread = _circuit_checks(recording)
    lacking = [*shortcomings(recording), *edits_on_top(review), *unread]
    if options.json or not sys.stdout.isatty():
        # Whoever sends the answer to a file or a program sees only these.
        for line in lacking:
            remark(f"{named(options.folder)}: {line}")
    if options.json:
        answer_json(
            {
                "recording": {
                    "folder": str(options.folder),
                    "id": about.recording_id,
                    "started_utc": about.started_utc.isoformat(),
                    "origin": about.origin.value,
                    "state": recording.state,
                    "damage": list(recording.damage),
                    "end_s": recording.end_ns / 1e9,
                    "sensors": sensors_to_list(recording),
                    "times": times_to_list(recording),
                    "typed_by_hand": typed_meters(recording),
                },
                "limits": (limits or about.limits).name,
                **review_to_dict(review),
                "circuit_checks": [one.to_dict() for one in checks],
            }
        )
    else:
        answer(f"{named(options.folder)}: {about.origin.value}, {recording.length_ns / 1e9:.1f} s")
        for line in lacking:
            answer(line)
        if typed_meters(recording):
            answer(f"TYPED BY HAND: the readings of {', '.join(typed_meters(recording))}")
        if about.instruments or not checks:
            answer(judgement_text(review, line_width(), budgets=options.budgets).rstrip())
        else:
            answer("A circuit check by itself: no run was recorded, so none is judged.")
        for one in checks:
            answer("\n" + one.text(line_width()).rstrip())
    failed = any(finding.verdict is Verdict.FAIL for finding in review.findings)
    return 1 if failed and options.fail_on_findings else 0
