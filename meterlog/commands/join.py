"""``meterlog join``: put a recording together whose disk failed."""

from __future__ import annotations

import argparse
from pathlib import Path

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.terminal import Progress, answer, answer_json, remark, short

_WORDS = """\
When the disk of a recording fails (full, taken out, broken), the recording goes on in another
folder, and says in which. Each part can be reviewed by itself; this makes one recording of them, a
new one: no part is touched. What the parts have in common is taken once. What is in none of them,
such as what a stick had not kept when it was pulled out, is counted, and said from when to when.
DIR is the last part. Exit code 0 when all rows are there, 1 when some are in no part."""
_EXAMPLES = """\
meterlog join before-goes-on-1 --out recordings/before-whole
meterlog join before-goes-on-1 --before /media/stick/before --out recordings/before-whole"""


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(subparsers, "join", _WORDS, _EXAMPLES)
    parser.add_argument("folder", metavar="DIR", type=Path, help="the last part")
    parser.add_argument(
        "--before",
        metavar="DIR",
        type=Path,
        help="where the part before it is now (default: where it was)",
    )
    parser.add_argument(
        "--out", metavar="DIR", type=Path, required=True, help="new or empty folder"
    )
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Join the parts, and say what came of it."""
    from meterlog.commands.folders import new_folder, recording_at
    from meterlog.recording import join_parts
    from meterlog.work.lost_stretches import lost_stretches, lost_words

    last, out = recording_at(options.folder), new_folder(options.out)
    progress = Progress("joining")
    try:
        joined = join_parts(last, out, options.before, progress)
    finally:
        progress.done()
    gaps = {key: lost_stretches(joined.parts, key) for key in joined.missing}
    if options.json:
        answer_json(
            {
                "folder": str(joined.folder),
                "parts": [str(part) for part in joined.parts],
                "missing_rows": joined.missing,
                "gaps_s": {
                    key: [[start / 1e9, end / 1e9] for start, end in each]
                    for key, each in gaps.items()
                },
                "damage": list(joined.damage),
            }
        )
    else:
        answer(f"{len(joined.parts)} parts joined and sealed in {short(joined.folder)}")
        for text in joined.damage:
            answer(f"  {text}")
    for key, rows in joined.missing.items():
        when = lost_words(gaps[key])
        gap = f": nothing {when}" if when else ""
        remark(f"{key}: {rows:,} rows are in none of the parts{gap}")
    return 1 if joined.missing else 0
