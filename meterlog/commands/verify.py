"""``meterlog verify``: tells whether a recording or a pack has been changed, and who signed it."""

from __future__ import annotations

import argparse
from pathlib import Path

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.terminal import Progress, answer, answer_json

_WORDS = """\
Checks every file against the digests taken when it was sealed (BagIt, RFC 8493).
A recording: each block of readings against its own checksum, too, and each event against the
one before it; the edits on top of it, which no seal holds, are named. A claim pack, as a folder, a
zip or its PDF: which file was changed, which rows of a table, which page of the PDF, and who signed
it. The PDF is checked by the files inside it and by what each page shows; "meterlog verify" of the
zip does not read the PDF beside it, so check both. Zips are unpacked into a folder of their own,
which is removed; unsafe ones are refused. Nothing is written to what is checked.
Counted are the files whose checksum stands in a list of the pack: not tagmanifest-sha256.txt,
the last list, nor signature.json, the signature over it.
If all that was packed is as it was, and only the zip or PDF file around it is not to the byte
(packed anew, saved by another program, a bit gone), that is said and is no failure.
Exit code 0 when all is as it was sealed and no edit on top is damaged, 1 when not; 2 when there is
nothing to check."""
_EXAMPLES = """\
meterlog verify recordings/before
meterlog verify claim.zip --key "1f0c 9a2e 77b0 43d1 5c6e 8a90 b2f4 07d3 e815 6a4c\""""


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(subparsers, "verify", _WORDS, _EXAMPLES)
    parser.add_argument(
        "folder",
        metavar="PATH",
        type=Path,
        help="a recording's folder, or a pack: folder, zip, PDF",
    )
    parser.add_argument(
        "--key",
        metavar="FINGERPRINT",
        default="",
        help="the key that must have signed a pack, as its maker told you by another way",
    )
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Verify a recording or a pack."""
    from meterlog.work.checked_edits import check_all

    checking = Progress("checking")
    try:
        # An interrupt may end it anywhere: nothing is written.
        checked = check_all(options.folder, options.key, checking)
    finally:
        checking.done()
    if options.json:
        answer_json(dict(checked.facts))
        return 0 if checked.intact else 1
    answer(checked.head)
    for line in checked.lines:
        answer(f"  {line}")
    return 0 if checked.intact else 1
