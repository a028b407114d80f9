"""``meterlog screen``: many recordings reviewed into one table, and baselines of good motors."""

from __future__ import annotations

import argparse
import os
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.terminal import Progress, answer, answer_json, named, remark, short, table

if TYPE_CHECKING:
    from meterlog.work.screening import Screened, ScreenRequest, Workers

_WORDS = """\
Looks through each FOLDER, 12 levels deep, judges every sealed recording, and writes two tables:
findings.parquet, with a row for each recording, each speed and each finding, and baselines.parquet,
with what good motors of each part number draw at each speed. What is damaged, not sealed or can't
be read is a row with the reason, and stops nothing. FOLDER may be an address that fsspec
understands; what lies there is fetched one by one, and removed after its review.

Stopped or killed at any time, it goes on where it was: a recording is judged again only if its
seal, its files, its edits or its job's card has changed, or the program or what is asked. What
kept one from being judged and may have passed, such as missing rights or a disk that was away, is
tried again. The tables hold what lies in the folders given, and nothing else; they name no vehicle
and no customer. Files in DIR that no screening has written are never touched.

The part number is that of the card of a job in or around the folders given (not in a store or an
archive), else what a recording says of its part up to a word for its serial number, if a digit is
in it; --number says how yours look. Which runs are good: see --rule.

Exit code 0 when all was looked at, whatever was found."""

_EXAMPLES = """\
meterlog screen recordings
meterlog screen recordings /archive --out screening --limits linear-12v --workers 2
meterlog screen recordings --number "[A-Z]{2}-[0-9]+" --json"""

_SHOWN = 10


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(subparsers, "screen", _WORDS, _EXAMPLES)
    parser.add_argument("folders", metavar="FOLDER", nargs="*", help="where recordings lie")
    parser.add_argument(
        "--out", metavar="DIR", type=Path, help="write the tables here, not in your data folder"
    )
    parser.add_argument("--limits", metavar="NAME|FILE", help="judge all by these limits instead")
    parser.add_argument(
        "--number", metavar="PATTERN", default="", help="regular expression of a part number"
    )
    parser.add_argument(
        "--workers", metavar="N", type=int, help="processes at work; as usual one a core"
    )
    parser.add_argument(
        "--threads", action="store_true", help="threads of this process instead of processes"
    )
    parser.add_argument(
        "--cluster", metavar="ADDRESS", default="", help="use the Dask scheduler at this address"
    )
    parser.add_argument("--rule", action="store_true", help="say which runs are good, and no more")
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Screen folders."""
    from meterlog.work.screening import RULE

    if options.rule:
        answer(RULE)
        return 0
    screened = _screened(_request(options))
    if options.json:
        answer_json(_to_dict(screened))
    else:
        answer("\n".join(_lines(screened)))
        _tell_not_judged(screened)
    return 0


def _request(options: argparse.Namespace) -> ScreenRequest:
    from meterlog.model.errors import UsageError
    from meterlog.profile import load_limits
    from meterlog.recording.given_folder import outside_recordings
    from meterlog.work.screening import ScreenRequest, usual_screening

    if not options.folders:
        raise UsageError(
            "a folder is needed.", subject="screen", remedy="Such as: meterlog screen recordings"
        )
    return ScreenRequest(
        folders=tuple(options.folders),
        out=outside_recordings(usual_screening() if options.out is None else options.out),
        limits=None if options.limits is None else load_limits(options.limits),
        number=options.number,
        workers=_workers(options),
    )


def _workers(options: argparse.Namespace) -> Workers:
    from meterlog.instruments.extras import install_line
    from meterlog.model.errors import UsageError
    from meterlog.work.screening import Workers, packages_missing

    count = os.cpu_count() or 1 if options.workers is None else options.workers
    if not 1 <= count <= 1024:
        raise UsageError(
            f"{count} is out of range.", subject="--workers", remedy="Expected 1 to 1024."
        )
    if options.cluster and (options.threads or options.workers is not None):
        raise UsageError(
            "has workers of its own.",
            subject="--cluster",
            remedy="Leave out --workers and --threads.",
        )
    missing = packages_missing(options.cluster)
    if missing:
        raise UsageError(
            f"needs what is not installed: {', '.join(missing)}.",
            subject="screen",
            remedy=f"Install it: {install_line(missing)}",
        )
    return Workers(count, options.threads, options.cluster)


def _screened(request: ScreenRequest) -> Screened:
    from meterlog.work.screening import screen

    progress = Progress("screening")

    def told(done: int, whole: int) -> None:
        if whole:
            progress.bar(done / whole, f"{done} of {whole} recordings")
        else:
            progress.note("looking through folders")

    try:
        return screen(request, told)
    finally:
        progress.done()


def _lines(screened: Screened) -> list[str]:
    counts = [(words, str(count)) for words, count in screened.outcomes.items()]
    if screened.not_judged:
        counts.append(("not judged", str(len(screened.not_judged))))
    again = screened.recordings - screened.reviewed
    return [
        f"{screened.recordings} recordings, {again} of them known from earlier.",
        *([table(("came to", "recordings"), counts)] if counts else []),
        f"{short(screened.table)}: {screened.rows} rows",
        f"{short(screened.baseline_table)}: {screened.baselines} baselines",
    ]


def _tell_not_judged(screened: Screened) -> None:
    for path in screened.unusable:
        remark(
            f"{short(path)}: damaged, of another version or with rows that can't be: what was in it"
            " was judged anew."
        )
    for folder, why in screened.not_judged[:_SHOWN]:
        remark(f"{named(folder)}: not judged: {' '.join(why.split())}")
    more = len(screened.not_judged) - _SHOWN
    if more > 0:
        remark(f"{more} more were not judged; the table says why.")


def _to_dict(screened: Screened) -> dict[str, object]:
    return {
        "recordings": screened.recordings,
        "reviewed": screened.reviewed,
        "outcomes": screened.outcomes,
        "not_judged": [{"folder": folder, "why": why} for folder, why in screened.not_judged],
        "unusable": [str(path) for path in screened.unusable],
        "findings": {"path": str(screened.table), "rows": screened.rows},
        "baselines": {"path": str(screened.baseline_table), "rows": screened.baselines},
    }
