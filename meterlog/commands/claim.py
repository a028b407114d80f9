"""``meterlog claim``: the signed pack of a warranty claim."""

from __future__ import annotations

import argparse
import getpass
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.folders import new_folder, recording_at
from meterlog.commands.review import add_as_recorded
from meterlog.commands.screen import paint_without_screen
from meterlog.commands.stop_signals import stoppable
from meterlog.commands.terminal import Progress, answer, answer_json, remark, short

if TYPE_CHECKING:
    from collections.abc import Sequence

    from meterlog.evidence.signing import Signer
    from meterlog.model import Limits

_WORDS = """\
Puts a job card and the recordings before and after the repair into one pack of two files:
claim.pdf, to be read and printed, with all tables inside it that are not too large for a PDF (it
says which are); and claim.zip, a bag (BagIt, RFC 8493) with every file, signed with this user's key
(Ed25519; made at first use, and kept on this machine only). Says before anything is written what
the job card does not say and a reviewer will ask for, what looks wrong on it, and of which meters
calibration is overdue or not stated.
"meterlog verify" tells of both files whether they are as they were made, and who signed them.

--without-customer leaves out customer, plate, VIN, where other entries repeat them, the notes
that were typed while recording, and who edited a recording and why. What a photo shows stays: look
at each. Nothing leaves this machine."""

_EXAMPLES = """\
meterlog claim job-4711/card.json --before recordings/before --after recordings/after --out claim
meterlog claim job-4711/card.json --before recordings/before --out pack --page letter --unsigned"""

_LOOK_AGAIN = "Look again, before it goes out:"


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(subparsers, "claim", _WORDS, _EXAMPLES)
    parser.add_argument("job", metavar="JOB", type=Path, help="the job card's file (meterlog job)")
    parser.add_argument("--before", metavar="DIR", type=Path, help="recording with the old part")
    parser.add_argument("--after", metavar="DIR", type=Path, help="recording with the new part")
    parser.add_argument(
        "--circuit",
        metavar="DIR",
        type=Path,
        action="append",
        default=[],
        help="a circuit check that was kept by itself; repeat for each",
    )
    parser.add_argument(
        "--out", metavar="PACK", type=Path, required=True, help="new or empty folder to write to"
    )
    parser.add_argument("--page", choices=["a4", "letter"], default="a4", help="paper of the PDF")
    parser.add_argument("--limits", metavar="NAME|FILE", help="judge by these limits instead")
    parser.add_argument(
        "--without-customer", action="store_true", help="leave out whose vehicle it is"
    )
    parser.add_argument(
        "--delimiter", choices=["comma", "semicolon", "tab"], default="comma", help="of all tables"
    )
    parser.add_argument(
        "--decimal", choices=["point", "comma"], default="point", help="mark of all tables"
    )
    parser.add_argument("--unsigned", action="store_true", help="make the pack without a signature")
    parser.add_argument(
        "--passphrase", action="store_true", help="ask for the passphrase of the signing key"
    )
    add_as_recorded(parser)
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Make a pack."""
    from meterlog.evidence.claim_content import PageSize
    from meterlog.evidence.table_form import table_form
    from meterlog.model.errors import UsageError
    from meterlog.model.job_card import missing_words
    from meterlog.profile.full_path import full_path
    from meterlog.work.claim import ClaimRequest, make_claim
    from meterlog.work.claim_ahead import doubts_ahead
    from meterlog.work.job_cards import load_card

    if options.before is None and options.after is None:
        raise UsageError(
            "no recording was given.", remedy="Give --before DIR, --after DIR, or both."
        )
    given = (("before", options.before), ("after", options.after))
    sides = [(name, recording_at(folder)) for name, folder in given if folder is not None]
    circuits = [recording_at(folder) for folder in options.circuit]
    form = table_form(options.delimiter, options.decimal)
    paint_without_screen()
    card = load_card(options.job)
    request = ClaimRequest(
        card=card,
        photos_from=full_path(options.job).parent,
        before=options.before,
        after=options.after,
        out=new_folder(options.out),
        circuits=tuple(options.circuit),
        page=PageSize(options.page),
        without_customer=options.without_customer,
        limits=_limits(options.limits),
        form=form,
        signer=_signer(options),
        as_recorded=options.as_recorded,
    )
    missing = missing_words(card)
    _tell("The job card does not say, and a reviewer will ask:", missing)
    doubts = doubts_ahead(card, sides, circuits)
    _tell(_LOOK_AGAIN, doubts)
    progress = Progress("making the pack")
    try:
        with stoppable(progress) as tell:
            made = make_claim(request, tell)
    finally:
        progress.done()
    for line in made.remarks:
        remark(line)
    _tell(_LOOK_AGAIN, made.doubts)
    if options.json:
        answer_json(
            {
                "out": str(options.out),
                "files": [path.name for path in made.files],
                "missing": list(made.missing),
                "doubts": [*doubts, *made.doubts],
                "remarks": list(made.remarks),
                "fingerprint": made.fingerprint,
            }
        )
        return 0
    answer(f"Written to {short(options.out)}:")
    for path in made.files:
        answer(f"  {path.name}")
    signed = f"Signed by the key {made.fingerprint}." if made.fingerprint else "Not signed."
    answer(signed)
    return 0


def _tell(heading: str, lines: Sequence[str]) -> None:
    """Tell lines under a heading; nothing where there are none."""
    if lines:
        remark(heading)
    for line in lines:
        remark(f"  {line}")


def _limits(name: str | None) -> Limits | None:
    if name is None:
        return None
    from meterlog.profile import load_limits

    return load_limits(name)


def _signer(options: argparse.Namespace) -> Signer | None:
    from meterlog.evidence.signing import Signer

    if options.unsigned:
        return None
    words = getpass.getpass("Passphrase of the signing key: ") if options.passphrase else ""
    return Signer.load_or_make(words)
