"""``meterlog export``: a recording as tables and a picture that anybody can open."""

from __future__ import annotations

import argparse
from dataclasses import replace
from pathlib import Path

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.folders import new_folder
from meterlog.commands.review import (
    add_as_recorded,
    edits_on_top,
    review_with_progress,
    shortcomings,
)
from meterlog.commands.screen import paint_without_screen
from meterlog.commands.terminal import Progress, answer, answer_json, named, remark, short

_WORDS = """\
Writes the whole judgement as judgement.txt and review.json; the readings, steps, spans, events,
findings and uncertainty budgets, the start-ups and taps if there are any, as CSV (RFC 4180), each
with its metadata (CSV on the Web, W3C); and the trace as trace.png. README.txt in the folder
explains each file and column. "meterlog import" of the folder gives a recording with the same
findings."""

# The names of evidence/table_form.py, which is imported only to run.
_DELIMITERS = ("comma", "semicolon", "tab")
_DECIMALS = ("point", "comma")


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(
        subparsers, "export", _WORDS, "meterlog export recordings/before --out claim/before"
    )
    parser.add_argument("folder", metavar="DIR", type=Path, help="the recording's folder")
    parser.add_argument(
        "--out", metavar="DIR2", type=Path, required=True, help="new or empty folder to write to"
    )
    parser.add_argument("--limits", metavar="NAME|FILE", help="judge by these limits instead")
    parser.add_argument(
        "--accept-steps",
        action="store_true",
        help="where no speed was recorded: take the steps found in the current for commanded ones",
    )
    parser.add_argument(
        "--delimiter",
        choices=_DELIMITERS,
        default="comma",
        help="between the fields of all tables; semicolon for spreadsheets with a decimal comma",
    )
    parser.add_argument(
        "--decimal",
        choices=_DECIMALS,
        default="point",
        help="decimal mark of all numbers; comma needs --delimiter semicolon or tab",
    )
    add_as_recorded(parser)
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Export a folder."""
    from meterlog.commands.stop_signals import stoppable
    from meterlog.evidence.seal_state import seal_words
    from meterlog.evidence.table_form import table_form
    from meterlog.work.evidence_folder import write_evidence

    form = table_form(options.delimiter, options.decimal)
    paint_without_screen()
    out = new_folder(options.out)
    recording, review, limits = review_with_progress(
        options.folder,
        options.limits,
        accept_steps=options.accept_steps,
        as_recorded=options.as_recorded,
    )
    checking = Progress("checking the seal")
    try:
        with stoppable(checking) as tell:
            sealed = seal_words(recording, tell)
    finally:
        checking.done()
    for line in (*sealed, *shortcomings(recording), *edits_on_top(review)):
        remark(f"{named(options.folder)}: {line}")
    if limits is not None:
        # What is exported must state the limits by which it was judged.
        recording.about = replace(recording.about, limits=limits)
    progress = Progress("exporting")
    try:
        with stoppable(progress) as tell:
            files, no_picture = write_evidence(recording, review, out, tell, form)
    finally:
        progress.done()
    if no_picture:
        remark(f"{no_picture}. The tables are complete without it.")
    if options.json:
        answer_json({"out": str(options.out), "files": [path.name for path in files]})
        return 0
    answer(f"Written to {short(options.out)}:")
    for path in files:
        answer(f"  {named(path.name)}")
    return 0
