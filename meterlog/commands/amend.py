"""``meterlog amend``: edits on top of a recording, which itself is never touched."""

from __future__ import annotations

import argparse
import getpass
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.folders import recording_at
from meterlog.commands.terminal import answer, answer_json, remark, short

if TYPE_CHECKING:
    from meterlog.model import EventKind
    from meterlog.model.amendment import Amendment
    from meterlog.recording import Recording
    from meterlog.work.amended import AmendedRecording

_WORDS = """\
Edits lie in a file beside the recording's folder, each with who, when and why; the recording stays
as it is, and its seal holds. Review, comparison, export, claim and window judge with the edits and
say every one of them; --as-recorded of the commands judges without. Readings can't be edited. No
edit is taken out again: undo is another edit.

Times are seconds from the recording's beginning, as the marks stand now; half a second off is near
enough where only one is meant. All edits of one command are checked before the first is written,
steps first, then marks, then limits. Without an edit it lists those that were made."""

_EXAMPLES = """\
meterlog amend recordings/before --step 12.3=3 --why "wrong key pressed"
meterlog amend recordings/before --move tap@41.2=40.9 --why "hand was late" --who "N. N."
meterlog amend recordings/before --limit speed.3.max_a=12 --why "data sheet of the motor"
meterlog amend recordings/before --withdraw tap@41.2 --why "the hood fell, nobody tapped"
meterlog amend recordings/before --list"""


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(subparsers, "amend", _WORDS, _EXAMPLES)
    parser.add_argument("folder", metavar="DIR", type=Path, help="the recording's folder")
    parser.add_argument(
        "--step",
        metavar="TIME=SPEED",
        action="append",
        default=[],
        help="the step that begins at TIME was at SPEED (0: off); repeat for each",
    )
    parser.add_argument(
        "--move",
        metavar="KIND@TIME=NEW",
        action="append",
        default=[],
        help="move a mark (speed, tap, wiggle, note) from TIME to NEW; repeat for each",
    )
    parser.add_argument(
        "--withdraw",
        metavar="KIND@TIME",
        action="append",
        default=[],
        help="a mark counts for nothing: it was made by mistake; repeat for each",
    )
    parser.add_argument(
        "--put-back",
        metavar="KIND@TIME",
        action="append",
        default=[],
        help="a mark that was withdrawn, here or while recording, counts again; repeat for each",
    )
    parser.add_argument(
        "--limit",
        metavar="KEY=VALUE",
        action="append",
        default=[],
        help="change a limit, by its key as in a limits file, such as fuse.rating_a; an empty"
        " VALUE takes it away; repeat for each",
    )
    parser.add_argument("--why", metavar="TEXT", default="", help="the reason; an edit needs one")
    parser.add_argument(
        "--who", metavar="TEXT", default="", help="who makes the edit; usually the user's login"
    )
    parser.add_argument("--list", action="store_true", help="list all edits that were made")
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Make edits, or list them."""
    from meterlog.recording import Recording
    from meterlog.work.amended import Amending, amend
    from meterlog.work.amendments import add_amendment, amendments_of

    folder = recording_at(options.folder)
    before, _ = amendments_of(folder)
    marks = options.move or options.withdraw or options.put_back
    wanted = bool(options.step or marks or options.limit)
    if wanted:
        for one in _edits(options, Recording.open(folder)):
            add_amendment(folder, one)
    elif options.why or options.who:
        _refuse("--why", "comes without an edit.", "Give --step, --move, --withdraw or --limit.")
    edits, damage = amendments_of(folder)
    said, _ = amend(Recording.open(folder), Amending())
    for line in damage:
        remark(line)
    if options.json:
        answer_json(
            {
                "folder": str(options.folder),
                "edits": [
                    {**_members(one), "words": words}
                    for one, words in zip(edits, said, strict=True)
                ],
                "made": len(edits) - len(before),
                "damage": list(damage),
            }
        )
        return 0
    shown = said if options.list or not wanted else said[len(before) :]
    head = "Written down on top of" if wanted and not options.list else "Edits on top of"
    answer(f"{head} {short(options.folder)}:" if shown else "No edits were made.")
    for words in shown:
        answer(f"  {words}")
    return 0


def _edits(options: argparse.Namespace, recording: Recording) -> list[Amendment]:
    """Give the edits that are asked for, each of which fits on top of those before it."""
    from meterlog.work.edits_on_top import EditsOnTop

    top = EditsOnTop(recording)
    found: list[Amendment] = []
    for one in _asked(options, top.amended, options.who or _login()):
        top.lay(one)
        found.append(one)
    return found


def _asked(options: argparse.Namespace, amended: AmendedRecording, who: str) -> Iterator[Amendment]:
    """Give one edit after the other; each is laid on before the next is asked for."""
    from meterlog.work.amended_marks import parse_seconds

    for text in options.step:
        at, speed = _halves("--step", text, "TIME=SPEED, such as 12.3=3")
        yield amended.marks.relabelled(parse_seconds(at), speed, who, options.why)
    for text in options.move:
        where, new = _halves("--move", text, "KIND@TIME=NEW, such as tap@41.2=40.9")
        kind, t_ns = _mark(f"--move {text}", where, "KIND@TIME=NEW")
        yield amended.marks.moved(kind, t_ns, parse_seconds(new), who, options.why)
    for text in options.withdraw:
        kind, t_ns = _mark(f"--withdraw {text}", text, "KIND@TIME")
        yield amended.marks.taken_back(kind, t_ns, who, options.why)
    for text in options.put_back:
        kind, t_ns = _mark(f"--put-back {text}", text, "KIND@TIME")
        yield amended.marks.put_back(kind, t_ns, who, options.why)
    for text in options.limit:
        key, value = _halves("--limit", text, "KEY=VALUE, such as speed.3.max_a=12", bare=True)
        yield amended.limited(key, value, who, options.why)


def _mark(option: str, where: str, form: str) -> tuple[EventKind, int]:
    """Read which mark is meant: its kind and its time in nanoseconds."""
    from meterlog.model import EventKind
    from meterlog.work.amended_marks import MOVABLE, parse_seconds

    kind, _, at = where.partition("@")
    kind = kind.strip().lower()
    if kind not in MOVABLE:
        _refuse(
            option,
            f"{kind!r} is no mark that can be edited.",
            f"Give {form} with one of: {', '.join(MOVABLE)}.",
        )
    return EventKind(kind), parse_seconds(at)


def _halves(option: str, text: str, form: str, *, bare: bool = False) -> tuple[str, str]:
    left, equals, right = (part.strip() for part in text.partition("="))
    if not (left and equals and (right or bare)):
        _refuse(f"{option} {text}", "does not say what to edit.", f"Give {form}.")
    return left, right


def _refuse(subject: str, message: str, remedy: str) -> None:
    from meterlog.model.errors import UsageError

    raise UsageError(message, subject=subject, remedy=remedy)


def _login() -> str:
    try:
        return getpass.getuser()
    except (OSError, KeyError, ImportError):
        return ""  # refused where the edit is written: somebody must have made it


def _members(one: Amendment) -> dict[str, object]:
    return {
        "kind": one.kind.value,
        "subject": one.subject,
        "t_s": None if one.t_ns is None else one.t_ns / 1e9,
        "old": one.old,
        "new": one.new,
        "who": one.who,
        "why": one.why,
        "made_utc": one.made_utc,
    }
