"""``meterlog compare``: an old motor against a new one, or one against several good ones."""

from __future__ import annotations

import argparse
import math
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.folders import recording_at
from meterlog.commands.review import add_as_recorded
from meterlog.commands.terminal import Progress, answer, answer_json, line_width

if TYPE_CHECKING:
    from meterlog.model import Comparison
    from meterlog.work.compare import CompareRequest
    from meterlog.work.screening import AgainstRequest

_WORDS = """\
Brings the currents of both recordings to the same motor voltage, speed by speed, and tells whether
they differ by more than the uncertainty; what both were measured with cancels. Checks the
conditions, and says why where two recordings can't be set side by side.

With --baseline all folders but the last are motors known to be good: the last one is held against
the interval within which at least 90 % of good ones lie, with 95 % confidence. With --against the
good ones are those that meterlog screen has found, of the part number that the recording says.

Exit code 0 when they were compared, whatever came of it; 1 when they can't be."""

_EXAMPLES = """\
meterlog compare recordings/old recordings/new
meterlog compare recordings/old recordings/new --max-difference 10 --json
meterlog compare --baseline recordings/good-1 recordings/good-2 recordings/good-3 recordings/new
meterlog compare --against screening recordings/new --part FM-20"""


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(subparsers, "compare", _WORDS, _EXAMPLES)
    parser.add_argument(
        "folders",
        metavar="DIR",
        type=Path,
        nargs="+",
        help="the old recording and the new one; with --baseline the good ones and the new one",
    )
    parser.add_argument(
        "--baseline", action="store_true", help="all but the last folder are of good motors"
    )
    parser.add_argument(
        "--against",
        metavar="TABLE",
        type=Path,
        help="hold one recording against the baselines in this table of meterlog screen",
    )
    parser.add_argument(
        "--part", metavar="NUMBER", default="", help="with --against: the motor's part number"
    )
    parser.add_argument("--limits", metavar="NAME|FILE", help="judge by these limits instead")
    parser.add_argument(
        "--speed-by-current",
        action="store_true",
        help="pair the speeds by order of current instead of by command",
    )
    parser.add_argument(
        "--max-difference",
        metavar="PERCENT",
        help="judge whether the new one lies within so much of the old one",
    )
    add_as_recorded(parser)
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Compare recordings."""
    if options.against is not None:
        comparison = _against(_against_request(options))
    else:
        comparison = _compared(_request(options))
    if options.json:
        from meterlog.evidence.comparison_json import comparison_to_dict

        answer_json(comparison_to_dict(comparison))
    else:
        from meterlog.evidence.comparison_text import comparison_lines

        if options.against is not None:
            from meterlog.work.screening import with_few_named

            comparison = with_few_named(comparison)
        answer("\n".join(comparison_lines(comparison, line_width())))
    return 1 if comparison.refusal else 0


def _compared(request: CompareRequest) -> Comparison:
    from meterlog.work.compare import compare_folders

    progress = Progress("comparing")
    try:
        return compare_folders(request, progress)
    finally:
        progress.done()


def _against(request: AgainstRequest) -> Comparison:
    from meterlog.work.screening import compare_with_baselines

    progress = Progress("comparing")
    try:
        return compare_with_baselines(request, progress)
    finally:
        progress.done()


def _against_request(options: argparse.Namespace) -> AgainstRequest:
    from meterlog.model.errors import UsageError
    from meterlog.profile import load_limits
    from meterlog.work.amended import Amending
    from meterlog.work.screening import AgainstRequest

    others = {
        "--baseline": options.baseline,
        "--speed-by-current": options.speed_by_current,
        "--max-difference": options.max_difference is not None,
    }
    for name, given in others.items():
        if given:
            raise UsageError(
                "does not go with --against.", subject=name, remedy="Leave one of the two out."
            )
    if len(options.folders) != 1:
        raise UsageError(
            f"takes one recording with --against, not {len(options.folders)}.",
            subject="compare",
            remedy="Give the new one alone; the good ones are in the table.",
        )
    return AgainstRequest(
        table=options.against,
        new=recording_at(options.folders[0]),
        number=options.part,
        limits=None if options.limits is None else load_limits(options.limits),
        amending=Amending(applied=not options.as_recorded),
    )


def _request(options: argparse.Namespace) -> CompareRequest:
    from meterlog.model.errors import UsageError
    from meterlog.profile import load_limits
    from meterlog.work.amended import Amending
    from meterlog.work.compare import CompareRequest

    folders: list[Path] = options.folders
    if len(folders) < 2 or (len(folders) > 2 and not options.baseline):
        raise UsageError(
            f"takes two recordings, not {len(folders)}.",
            subject="compare",
            remedy="Give OLD and NEW; or --baseline and the good ones, then NEW.",
        )
    largest = _percent(options.max_difference)
    if options.baseline and largest is not None:
        raise UsageError(
            "does not go with --baseline.",
            subject="--max-difference",
            remedy="Against good motors their own spread decides; leave one of the two out.",
        )
    return CompareRequest(
        old=tuple(recording_at(folder) for folder in folders[:-1]),
        new=recording_at(folders[-1]),
        limits=None if options.limits is None else load_limits(options.limits),
        baseline=options.baseline,
        by_current=options.speed_by_current,
        max_difference_percent=largest,
        amending=Amending(applied=not options.as_recorded),
    )


def _percent(text: str | None) -> float | None:
    from meterlog.model.errors import UsageError

    if text is None:
        return None
    try:
        value = float(text.strip().removesuffix("%").replace(",", "."))
    except ValueError:
        value = math.nan
    if not (math.isfinite(value) and value > 0.0):
        raise UsageError(
            f"is no percentage above 0: {text!r}.",
            subject="--max-difference",
            remedy="Give a number, such as 10 for 10 %.",
        )
    return value
