"""``meterlog circuit``: which part is bad, and what to measure next."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.terminal import answer, answer_json, line_width, named, remark, table

if TYPE_CHECKING:
    from meterlog.model import Circuit, CircuitCheck, CircuitVerdict
    from meterlog.model.circuit_entries import Entry
    from meterlog.work.circuit_log import CircuitLog

_WORDS = """\
Tells which replaceable unit the readings speak against, with odds, which readings contradict the
others, the voltage drops beside their limits, and the test that tells most for its minutes.

Options that describe a reading hold for all readings after them: --state, --complaint,
--accuracy and --meter-ohm. CIRCUIT is the name of a circuit profile or a .toml file; without
readings its test points are listed, with what to do first. With --from the checks that a
recording holds are judged again.

Volts are against the battery negative post. Follow the service manual of the vehicle."""

_EXAMPLES = """\
meterlog circuit low-side-linear-12v
meterlog circuit low-side-linear-12v --state key=on,speed=4 --sign fan=dead \\
      --reading motor-feed=12.3 --reading motor-return=12.3 --json
meterlog circuit --from recordings/before"""


class _InOrder(argparse.Action):
    """Keeps options in the order in which they were typed."""

    def __call__(
        self,
        parser: argparse.ArgumentParser,
        namespace: argparse.Namespace,
        values: str | Sequence[Any] | None,
        option_string: str | None = None,
    ) -> None:
        """Append (option, value)."""
        del parser, option_string
        namespace.entered = [*(namespace.entered or []), (self.dest, values)]


_NO_ROOM = "Free some space or choose another folder, and save it again."


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(subparsers, "circuit", _WORDS, _EXAMPLES)
    parser.add_argument("circuit", metavar="CIRCUIT", nargs="?", help="circuit profile or file")
    parser.set_defaults(entered=None)
    for flag, metavar, words in (
        ("--state", "STATE", "such as key=on,speed=4,unplugged=motor,pulled=main-fuse"),
        ("--reading", "POINT=VALUE", "volts or amperes at a test point; +-U states its U (95 %%)"),
        ("--sign", "SIGN=VALUE", "such as fan=dead, tap=starts, wheel=stiff, click=heard"),
        ("--complaint", "yes|no", "whether the complaint was there as these were taken"),
        ("--accuracy", "PERCENT+AMOUNT", "of the meter, such as 0.5+0.02"),
        ("--meter-ohm", "OHMS", "input resistance of the meter (usual: 10e6)"),
        ("--no-reach", "NAME", "a place or a test point that can't be reached"),
        ("--opened", "PLACE", "a place that is laid open already"),
    ):
        parser.add_argument(flag, metavar=metavar, action=_InOrder, help=words)
    parser.add_argument(
        "--told-at", metavar="ODDS", type=float, default=0.95,
        help="tell a unit above this probability (usual: 0.95)",
    )  # fmt: skip
    parser.add_argument("--from", dest="source", metavar="DIR", type=Path, help="a recording")
    parser.add_argument("--save", metavar="DIR", type=Path, help="keep the check as a recording")
    parser.add_argument("--points", action="store_true", help="list test points and places")
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Judge a circuit."""
    from meterlog.model.errors import UsageError

    if not 0.5 <= options.told_at <= 0.9999:
        raise UsageError(
            "is out of range.", subject=f"--told-at {options.told_at:g}", remedy="0.5 to 0.9999."
        )
    if options.source is not None:
        return _again(options)
    if options.circuit is None:
        from meterlog.profile import names

        raise UsageError(
            "which circuit?", remedy=f"There are: {', '.join(names('circuits'))}; or give a file."
        )
    return _fresh(options)


def _fresh(options: argparse.Namespace) -> int:
    from meterlog.commands.folders import new_folder
    from meterlog.model.circuit_entries import check_of
    from meterlog.model.errors import UsageError
    from meterlog.profile import load_circuit
    from meterlog.work.circuit_checks import isolation_of

    circuit = load_circuit(options.circuit)
    if options.points:
        if options.entered or options.save is not None:
            raise UsageError(
                "goes with no readings or --save.",
                subject="--points",
                remedy="List the points first, then enter what was read there.",
            )
        return _list_points(circuit, as_json=options.json)
    folder = None if options.save is None else new_folder(options.save)
    entries = _entries(circuit, options.entered or [])
    if folder is not None and not entries:
        raise UsageError(
            "nothing was entered that could be kept.",
            subject=f"--save {folder}",
            remedy="Give readings or signs, or leave --save out.",
        )
    check = check_of(circuit.name, entries, circuit.text)
    # Judged first: what can't be of this circuit is refused before it is kept for good.
    verdict = isolation_of(circuit, options.told_at).verdict(check)
    if folder is not None:
        _save(circuit, entries, folder)
    _say(circuit, check, verdict, as_json=options.json)
    return 0


def _save(circuit: Circuit, entries: Sequence[Entry], folder: Path) -> None:
    """Keep what was typed as a recording."""
    from meterlog.recording.imported_folder import imported_folder
    from meterlog.work.circuit_log import CircuitLog

    # Whole or not at all: what a full disk cut off would bar the same command with more room.
    with imported_folder(folder, _NO_ROOM) as aside:
        log = CircuitLog(lambda: aside)
        log.choose(circuit)
        for entry in entries:
            _keep(log, entry)
        log.close()
    remark(f"Kept in {folder}.")


def _keep(log: CircuitLog, entry: Entry) -> None:
    from meterlog.model import CircuitReading, CircuitSign
    from meterlog.model.circuit_entries import Opened, Reach

    if isinstance(entry, CircuitReading):
        log.read(
            entry.point,
            entry.value,
            entry.state,
            entry.standard_u,
            shared_u=entry.shared_u,
            meter_ohm=entry.meter_ohm,
            complaint=entry.complaint,
            source=entry.source,
            basis=entry.basis,
        )
    elif isinstance(entry, CircuitSign):
        log.sign(entry.sign, entry.value, entry.state)
    elif isinstance(entry, Reach):
        log.reach(entry.name, reached=entry.reached)
    elif isinstance(entry, Opened):
        log.opened(entry.place)


def _entries(circuit: Circuit, typed: Sequence[tuple[str, str]]) -> list[Entry]:
    from meterlog.commands.circuit_typed import TypedEntries

    made = TypedEntries(circuit)
    for option, text in typed:
        made.take(option, text)
    made.finish()
    return made.entries


def _again(options: argparse.Namespace) -> int:
    """Judge the checks of a recording once more."""
    from meterlog.commands.folders import recording_at
    from meterlog.model.errors import UsageError
    from meterlog.recording import Recording
    from meterlog.work.circuit_checks import judged_checks

    aside = options.circuit is not None or options.save is not None or options.points
    if aside or options.entered:
        raise UsageError(
            "goes with no CIRCUIT, readings, --points or --save.",
            subject="--from",
            remedy="The recording says by itself which circuit it is.",
        )
    recording_at(options.source)
    recording = Recording.open(options.source)
    judged, lacking = judged_checks(recording, told_at=options.told_at)
    for line in (*recording.damage, *lacking):
        remark(f"{named(options.source)}: {line}")
    if not judged and lacking:
        raise UsageError(
            "no check of a circuit in it can be judged.",
            subject=str(options.source),
            remedy="The lines above say why; the entries themselves are kept in it as they are.",
        )
    if not judged:
        raise UsageError(
            "holds no check of a circuit.",
            subject=str(options.source),
            remedy="Enter one with: meterlog circuit CIRCUIT --reading ... --save DIR",
        )
    if options.json:
        checks = [one.to_dict() for one in judged]
        answer_json({"checks": checks, "lacking": list(lacking)})
    else:
        answer("\n".join(one.text(line_width()) for one in judged).rstrip())
    return 0


def _say(circuit: Circuit, check: CircuitCheck, verdict: CircuitVerdict, *, as_json: bool) -> None:
    from meterlog.evidence.circuit_json import circuit_to_dict
    from meterlog.evidence.circuit_text import circuit_text

    if as_json:
        answer_json(circuit_to_dict(circuit, check, verdict))
    else:
        answer(circuit_text(circuit, check, verdict, line_width()).rstrip())


def _list_points(circuit: Circuit, *, as_json: bool) -> int:
    points = [
        {
            "point": point.name,
            "kind": point.kind.value,
            "where": point.label,
            "place": point.place,
            "minutes": point.minutes,
            "reach": point.reach,
        }
        for point in circuit.points
    ]
    if as_json:
        places = [
            {"place": one.name, "where": one.label, "minutes": one.minutes}
            for one in circuit.places
        ]
        answer_json({"circuit": circuit.name, "points": points, "places": places})
        return 0
    answer(f"{circuit.title} ({circuit.name})\n")
    head = ("point", "kind", "where", "place")
    answer(table(head, [[str(one[key]) for key in head] for one in points]))
    rows = [(one.name, one.label, f"{one.minutes:g} min") for one in circuit.places]
    answer("\n" + table(("place", "where", "to get there"), rows))
    return 0
