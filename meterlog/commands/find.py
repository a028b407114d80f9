"""``meterlog find``: find recordings, circuit checks and jobs again."""

from __future__ import annotations

import argparse
import sys
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.terminal import Progress, answer, answer_json, named, remark, short, table

if TYPE_CHECKING:
    from collections.abc import Sequence

    from meterlog.work.library import Hit, Library, Refreshed, Wanted

_WORDS = """\
Each of WORDS must be there, anywhere and in any order: vehicle, part, work order, complaint,
technician, meter, folder, and all that the job's card says. Accents and case do not matter. Looks
into the usual folder for recordings and those that the window watches, or into each --folder.

What was read is kept as an index in your cache folder and read again wherever a folder has
changed; the index can be deleted at any time. Judging takes longer: verdicts are those known from
earlier, and --judge makes those that are missing.

DATE is year-month-day, year-month or year, in the local time of the recording. VERDICT is one of:
fault-found, suspicion, cant-tell, in-order, not-judged.

Exit code 0 when something was found, 1 when nothing was or a folder can't be looked into."""

_EXAMPLES = """\
meterlog find kestrel fm-20 --from 2026-03
meterlog find --verdict fault-found --kind job --json
meterlog find 4711 --folder recordings --judge"""

_HEAD = ("started", "what", "work order", "vehicle", "part", "verdict", "folder")
_WIDEST = 30


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(subparsers, "find", _WORDS, _EXAMPLES)
    parser.add_argument("words", metavar="WORDS", nargs="*", help="what must be there")
    parser.add_argument("--from", dest="since", metavar="DATE", default="", help="not before it")
    parser.add_argument("--to", dest="until", metavar="DATE", default="", help="not after it")
    parser.add_argument("--verdict", metavar="VERDICT", help="only what comes to this")
    parser.add_argument(
        "--kind", choices=("recording", "circuit", "job"), help="only what is of this kind"
    )
    parser.add_argument(
        "--folder",
        metavar="DIR",
        type=Path,
        action="append",
        default=[],
        help="look into this folder, not the usual ones; repeat for each",
    )
    parser.add_argument(
        "--judge", action="store_true", help="judge first what has no verdict yet; takes longer"
    )
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Look through the folders, then search."""
    from meterlog.work.library import Library

    wanted = _wanted(options)
    roots = _roots(options.folder)
    with Library() as library:
        looked = _refreshed(library, roots, judge=options.judge)
        hits = library.search(roots, wanted)
        told = library.told
    _remarks(looked, told, wanted, hits)
    if options.json:
        answer_json(_to_dict(hits, looked))
    elif hits:
        answer("\n".join(_lines(hits)))
    else:
        answer(f"Nothing was found in {', '.join(map(short, roots))}.")
    return 1 if looked.gone or not hits else 0


def _wanted(options: argparse.Namespace) -> Wanted:
    from meterlog.work.library import Kind, Wanted, wanted_date, wanted_verdict

    kinds = {"recording": Kind.RUN, "circuit": Kind.CIRCUIT, "job": Kind.JOB, None: None}
    return Wanted(
        " ".join(options.words),
        wanted_date(options.since),
        wanted_date(options.until, last=True),
        None if options.verdict is None else wanted_verdict(options.verdict),
        kinds[options.kind],
    )


def _roots(folders: Sequence[Path]) -> tuple[Path, ...]:
    from meterlog.model.errors import UsageError
    from meterlog.work.library import WatchedFolders
    from meterlog.work.shelf import recordings_folder

    for folder in folders:
        if not folder.is_dir():
            raise UsageError(
                "is no folder, or is not there.",
                subject=f"--folder {folder}",
                remedy="Give a folder that holds recordings or jobs.",
            )
    if folders:
        return tuple(folders)
    usual = recordings_folder()
    return (*([usual] if usual.is_dir() else []), *WatchedFolders().load())


def _refreshed(library: Library, roots: Sequence[Path], *, judge: bool) -> Refreshed:
    progress = Progress("looking through folders")
    try:
        looked = library.refresh(roots, progress)
    finally:
        progress.done()
    if judge and looked.to_judge:
        progress = Progress("judging")
        try:
            library.judge_missing(roots, progress)
        finally:
            progress.done()
        return replace(looked, to_judge=0)
    return looked


def _remarks(looked: Refreshed, told: str, wanted: Wanted, hits: Sequence[Hit]) -> None:
    from meterlog.work.library import Verdicts

    if told:
        remark(told)
    for folder, why in looked.gone:
        remark(
            f"{named(folder)}: can't be looked into: {why}. What is known of it is from earlier."
        )
    if looked.unsealed:
        many = len(looked.unsealed)
        what = "1 recording was" if many == 1 else f"{many} recordings were"
        remark(f"{what} cut off and never sealed; the window seals them on its Recordings page.")
    shown = sum(hit.verdict is Verdicts.NOT_JUDGED and hit.state != "" for hit in hits)
    if wanted.verdict not in {None, Verdicts.NOT_JUDGED} and looked.to_judge:
        remark("Some are not judged yet and not among these; --judge judges them.")
    elif shown and wanted.verdict is None and looked.to_judge:
        remark("Some are not judged yet; --judge judges them.")


def _lines(hits: Sequence[Hit]) -> list[str]:
    rows, head = [_row(hit) for hit in hits], tuple[str, ...](_HEAD)
    if any(hit.found_by for hit in hits):
        by = [" · ".join(hit.found_by) or "-" for hit in hits]
        rows = [(*row[:-1], words, row[-1]) for row, words in zip(rows, by, strict=True)]
        head = (*head[:-1], "found by", head[-1])
    if not sys.stdout.isatty():
        return [table(head, rows)]
    return [table(head, [tuple(map(_cut, row[:-1])) + row[-1:] for row in rows])]


def _row(hit: Hit) -> tuple[str, ...]:
    marks = (hit.mark, "" if hit.state == "sealed" else hit.state, "AWAY" if hit.away else "")
    what = ", ".join((hit.kind.value, *(mark for mark in marks if mark)))
    verdict = hit.verdict.value + (f" ({hit.worst})" if hit.worst else "")
    cells = (hit.started[:16].replace("T", " "), what, hit.work_order, hit.vehicle, hit.part)
    return (*(" ".join((cell or "-").split()) for cell in (*cells, verdict)), short(hit.folder))


def _cut(cell: str) -> str:
    return cell if len(cell) <= _WIDEST else f"{cell[: _WIDEST - 1]}…"


def _to_dict(hits: Sequence[Hit], looked: Refreshed) -> dict[str, object]:
    return {
        "found": [
            {
                "folder": str(hit.folder),
                "kind": hit.kind.value,
                "started_local": hit.started or None,
                "work_order": hit.work_order,
                "vehicle": hit.vehicle,
                "part": hit.part,
                "side": hit.side or None,
                "technician": hit.technician,
                "odometer": hit.odometer,
                "complaint": hit.complaint,
                "mark": hit.mark,
                "duration_s": hit.duration_s,
                "instruments": hit.instruments,
                "state": hit.state,
                "trouble": hit.trouble,
                "away": hit.away,
                "found_by": list(hit.found_by),
                "verdict": hit.verdict.value,
                "worst": hit.worst or None,
                "sentence": hit.sentence,
                "currents": [
                    {
                        "speed": one.speed,
                        "mean_a": one.mean_a,
                        "expanded_uncertainty_a": one.expanded_a,
                    }
                    for one in hit.currents
                ],
            }
            for hit in hits
        ],
        "known": looked.known,
        "gone": [{"folder": str(folder), "why": why} for folder, why in looked.gone],
        "unsealed": [str(folder) for folder in looked.unsealed],
    }
