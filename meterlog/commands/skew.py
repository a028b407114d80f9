"""``meterlog skew``: how much later one meter's times are than another's."""

from __future__ import annotations

import argparse
import textwrap
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.folders import recording_at
from meterlog.commands.terminal import Progress, answer, answer_json, line_width, short, table

if TYPE_CHECKING:
    from meterlog.work.skew import SkewFound
    from meterlog.work.skews import KeptSkews, MeterKey

_WORDS = """\
Record two meters on one fan, switch it off and on some five to ten times, a few seconds apart,
and run this on the recording. Each switching that both meters show tells how far apart their
times are; the mean and its uncertainty are given. This assumes that both see the switching at the
same instant: two currents do when they stop, a current and the motor's feed or return when they
begin. Switch between off and the highest speed: on lower ones a controller that limits the current
lets the motor's return come down slowly.

With --keep the next recordings with these two meters have it subtracted, and say so. It is kept
by meter profile and serial number. Exit code 1 when no skew could be measured."""

_EXAMPLES = """\
meterlog skew recordings/two-meters
meterlog skew recordings/two-meters --keep
meterlog skew recordings/three-meters --meters line-logger bench-scpi --json"""


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(subparsers, "skew", _WORDS, _EXAMPLES)
    parser.add_argument("folder", metavar="DIR", type=Path, help="the recording's folder")
    parser.add_argument(
        "--meters", nargs=2, metavar=("A", "B"), help="which two, when there are more"
    )
    what = parser.add_mutually_exclusive_group()
    what.add_argument("--keep", action="store_true", help="subtract it in the next recordings")
    what.add_argument("--forget", action="store_true", help="forget what is kept of these two")
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Measure the skew, and keep it if asked to."""
    from meterlog.model.errors import UsageError
    from meterlog.recording import Recording
    from meterlog.work.skew import skew_of
    from meterlog.work.skews import KeptSkews, MeterKey

    recording = Recording.open(recording_at(options.folder))
    progress = Progress("measuring")
    try:
        found = skew_of(recording, tuple(options.meters) if options.meters else None, progress)
    finally:
        progress.done()
    kept = KeptSkews()
    keys = MeterKey.of(found.first), MeterKey.of(found.second)
    forgotten = kept.forget(*keys) if options.forget else None
    if options.keep and keys[0] == keys[1]:
        raise UsageError(
            "two meters of one profile without serial numbers can't be told apart next time.",
            subject=found.first.profile,
            remedy="Give one of them a profile of its own name.",
        )
    keep = options.keep and not found.skew.refused
    if keep:
        _keep(kept, keys, found)
    if options.json:
        answer_json(
            {
                "folder": str(options.folder),
                **_as_json(found),
                "kept_in": str(kept.path) if keep else None,
                "forgotten": forgotten,
            }
        )
    else:
        _tell(options.folder, found)
        if keep:
            _tell_kept(found, kept.path)
        if forgotten is not None:
            answer("Forgotten." if forgotten else "Nothing was kept of these two.")
    return 1 if found.skew.refused and not options.forget else 0


def _keep(kept: KeptSkews, keys: tuple[MeterKey, MeterKey], found: SkewFound) -> None:
    from datetime import UTC, datetime

    from meterlog.work.skews import KeptSkew

    skew = found.skew
    kept.keep(*keys, KeptSkew(found.whole_s, skew.u_s, len(skew.steps), datetime.now(UTC)))


def _names(found: SkewFound) -> tuple[str, str]:
    return (
        f"{found.first.key} ({found.roles[0].value})",
        f"{found.second.key} ({found.roles[1].value})",
    )


def _tell(folder: Path, found: SkewFound) -> None:
    skew, (first, second) = found.skew, _names(found)
    answer(f"{short(folder)}: {first} and {second}")
    if skew.steps:
        rows = [
            (
                f"{step.first_ns / 1e9:.3f} s",
                "on" if step.on else "off",
                f"{step.later_s * 1e3:+.1f} ms",
            )
            for step in skew.steps
        ]
        answer(table(("step at", "to", f"{found.second.key} later by"), rows))
    if skew.alone:
        answer(f"{skew.alone} more were shown by one meter alone, or had no single partner.")
    if skew.refused:
        _say(f"No skew: {skew.refused}")
        return
    _say(
        f"The times of {found.second.key} are {abs(skew.later_s) * 1e3:.1f} ms"
        f" {'later' if skew.later_s >= 0.0 else 'earlier'} than those of {found.first.key},"
        f" ±{2.0 * skew.u_s * 1e3:.1f} ms (k=2, from {len(skew.steps)} steps), if both see the"
        f" switching at the same instant."
    )
    before_s = found.second.skew_s - found.first.skew_s
    if before_s:
        _say(
            f"That is what is left: {before_s * 1e3:.1f} ms were subtracted when this was"
            f" recorded; {found.whole_s * 1e3:.1f} ms in all."
        )


def _tell_kept(found: SkewFound, path: Path) -> None:
    from meterlog.work.skews import MeterKey

    _say(f"Kept in {path}: the next recordings with these two subtract it.")
    for instrument in (found.first, found.second):
        if not MeterKey.of(instrument).serial:
            _say(
                f"{instrument.key} gave no serial number: it holds for any meter with the profile"
                f" {instrument.profile}."
            )


def _say(text: str) -> None:
    answer(textwrap.fill(text, line_width()))


def _as_json(found: SkewFound) -> dict[str, object]:
    skew = found.skew
    measured = not skew.refused
    return {
        "first": {"key": found.first.key, "role": found.roles[0].value},
        "second": {"key": found.second.key, "role": found.roles[1].value},
        "steps": [
            {
                "first_s": step.first_ns / 1e9,
                "second_s": step.second_ns / 1e9,
                "to": "on" if step.on else "off",
                "second_later_s": step.later_s,
            }
            for step in skew.steps
        ],
        "alone": skew.alone,
        "second_later_s": skew.later_s if measured else None,
        "standard_uncertainty_s": skew.u_s if measured else None,
        "subtracted_when_recorded_s": found.second.skew_s - found.first.skew_s,
        "in_all_s": found.whole_s if measured else None,
        "assumed": "both meters see the switching at the same instant",
        "refused": skew.refused or None,
    }
