"""``meterlog verify``: tells whether anything has been changed since the seal."""

from __future__ import annotations

import argparse
from pathlib import Path

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.folders import recording_at
from meterlog.commands.terminal import answer, answer_json

_WORDS = """\
Checks every file of the folder against the digests taken when it was sealed (BagIt, RFC 8493),
and each block of readings against its own checksum. Exit code 0 when all is as it was sealed,
1 when not; 2 when there is no recording."""


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(subparsers, "verify", _WORDS, "meterlog verify recordings/before")
    parser.add_argument("folder", metavar="DIR", type=Path, help="the recording's folder")
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Verify a folder."""
    from meterlog.evidence import seal_digest, verify_folder

    result = verify_folder(recording_at(options.folder))
    if options.json:
        answer_json(
            {
                "folder": str(options.folder),
                "intact": result.intact,
                "seal_sha256": seal_digest(options.folder),
                "problems": list(result.problems),
                "remarks": list(result.remarks),
            }
        )
    elif result.intact:
        answer(f"{options.folder}: intact. Every file agrees with the seal.")
        answer(f"  seal: {seal_digest(options.folder)}")
        answer(
            "  This finds damage and edits. It can't find somebody who seals anew: write the seal"
            " on the work order when the recording is made, and compare it."
        )
    else:
        answer(f"{options.folder}: NOT as sealed.")
        for problem in result.problems:
            answer(f"  {problem}")
    if not options.json:
        for remark in result.remarks:
            answer(f"  known: {remark}")
    return 0 if result.intact else 1
