"""``meterlog verify``: tells whether a recording or a pack has been changed, and who signed it."""

from __future__ import annotations

import argparse
from pathlib import Path

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.folders import recording_at
from meterlog.commands.terminal import answer, answer_json

_WORDS = """\
Checks every file against the digests taken when it was sealed (BagIt, RFC 8493).
A recording: each block of readings against its own checksum, too, and each event against the
one before it. A claim pack, as a folder, a zip or its PDF: which file was changed, which rows of a
table, and who signed it. Zips are unpacked into a folder of their own, which is removed; unsafe
ones are refused. Nothing is written to what is checked.
Exit code 0 when all is as it was sealed, 1 when not; 2 when there is nothing to check."""
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
    from meterlog.evidence.pack_verify import is_pack

    key = _key(options.key)
    if options.folder.exists() and is_pack(options.folder):
        return _pack(options.folder, key, as_json=options.json)
    folder = recording_at(options.folder)
    if key:
        from meterlog.model.errors import UsageError

        raise UsageError(
            "is a recording; only packs are signed.",
            subject=str(folder),
            remedy="Leave --key out, or give the pack.",
        )
    return _recording(folder, as_json=options.json)


def _key(typed: str) -> str:
    if not typed:
        return ""
    from meterlog.evidence.signed_manifest import fingerprint_typed
    from meterlog.model.errors import UsageError

    try:
        return fingerprint_typed(typed)
    except ValueError as error:
        raise UsageError(
            f"{error}.",
            subject="--key",
            remedy="Give all 40 digits, as they stand on the pack's pages, in double quotes.",
        ) from error


def _pack(path: Path, key: str, *, as_json: bool) -> int:
    from meterlog.evidence.pack_verify import verify_pack

    result = verify_pack(path, key)
    if as_json:
        answer_json({"pack": str(path), **result.to_dict()})
        return 0 if result.intact else 1
    if result.intact:
        answer(f"{path}: intact. {result.files} files agree with the lists of the pack.")
    else:
        answer(f"{path}: NOT as it was packed.")
    for problem in result.problems:
        answer(f"  {problem}")
    answer(f"  {result.signature.words}")
    for remark in result.remarks:
        answer(f"  known: {remark}")
    return 0 if result.intact else 1


def _recording(folder: Path, *, as_json: bool) -> int:
    from meterlog.evidence import seal_digest, verify_folder

    result = verify_folder(folder)
    if as_json:
        answer_json(
            {
                "folder": str(folder),
                "intact": result.intact,
                "seal_sha256": seal_digest(folder),
                "problems": list(result.problems),
                "remarks": list(result.remarks),
            }
        )
        return 0 if result.intact else 1
    if result.intact:
        answer(f"{folder}: intact. Every file agrees with the seal.")
        answer(f"  seal: {seal_digest(folder)}")
        answer(
            "  This finds damage and edits. It can't find somebody who seals anew: write the seal"
            " on the work order when the recording is made, and compare it."
        )
    else:
        answer(f"{folder}: NOT as sealed.")
        for problem in result.problems:
            answer(f"  {problem}")
    for remark in result.remarks:
        answer(f"  known: {remark}")
    return 0 if result.intact else 1
