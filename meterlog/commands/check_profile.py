"""``meterlog check-profile``: every fault of a profile, or what it says and where it belongs."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.terminal import answer, answer_json

if TYPE_CHECKING:
    from meterlog.model import Circuit
    from meterlog.model.errors import ProfileError
    from meterlog.profile import MeterProfile

_SHOWN = 40
"""So many faults of a file are printed; ``--json`` has all."""
_WORDS = """\
Checks profiles of meters and of circuits against the published schemas (profiles/*.schema.json)
and for keys that contradict each other. Names every fault with file, line, key and what was
expected. Of a good meter profile it shows how the meter is talked to, its channels and their
accuracy; of a good circuit profile its units, how likely each is to be the bad one before anything
was measured, and its test points; of both where the file belongs so that it is found by its name.
Exit code 1 when there is any fault.

Circuits that are shipped, each also as ...-24v:
  low-side-linear-12v        low-side-high-relay-12v    high-side-linear-12v
  pulsed-module-12v          resistors-ground-side-12v  resistors-feed-side-12v
Option --list names all profiles, your own first."""


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(
        subparsers, "check-profile", _WORDS, "meterlog check-profile my-meter.toml"
    )
    parser.add_argument("files", metavar="FILE", nargs="*", type=Path, help="a profile")
    parser.add_argument("--list", action="store_true", help="name all profiles and end")
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Check the files; 1 when any is wrong."""
    from meterlog.commands.profile_list import list_profiles
    from meterlog.model.errors import UsageError

    if options.list:
        list_profiles(as_json=options.json)
        return 0
    if not options.files:
        raise UsageError("no file was named.", remedy="Name the file of a profile, or use --list.")
    checked: list[dict[str, object]] = []
    said: list[str] = []
    for file in options.files:
        wrong, good = _check(file)
        if good is not None:
            words, answered = _told(file, good)
            said.append(words)
            checked.append({"file": str(file), "faults": [], **answered})
            continue
        faults = [
            {"where": error.subject, "message": error.message, "remedy": error.remedy}
            for error in wrong
        ]
        checked.append({"file": str(file), "faults": faults, "profile": None})
        many = "1 fault" if len(wrong) == 1 else f"{len(wrong)} faults"
        shown = [f"  {error}" for error in wrong[:_SHOWN]]
        if len(wrong) > _SHOWN:
            shown.append(f"  and {len(wrong) - _SHOWN} more; correct these first.")
        said.append("\n".join((f"{file}: {many}.", *shown)))
    if options.json:
        answer_json({"profiles": checked})
    else:
        answer("\n\n".join(said))
    return 1 if any(one["faults"] for one in checked) else 0


def _told(file: Path, good: MeterProfile | Circuit) -> tuple[str, dict[str, object]]:
    """Say what a good profile says, in words and as JSON."""
    from meterlog.commands.circuit_report import circuit_json, circuit_summary
    from meterlog.commands.profile_report import place_of, profile_json, summary
    from meterlog.model import Circuit

    if isinstance(good, Circuit):
        place = place_of(file, "circuits")
        answered = {"circuit": circuit_json(good)}
        return f"{circuit_summary(file, good)}\n{place}", answered | place.as_json()
    return summary(file, good), {"profile": profile_json(good)} | place_of(file).as_json()


def _check(file: Path) -> tuple[list[ProfileError], MeterProfile | Circuit | None]:
    from meterlog.circuit.in_order import check_in_order
    from meterlog.model.errors import ProfileError
    from meterlog.profile import (
        circuit_faults,
        circuit_profile,
        is_circuit,
        meter_faults,
        meter_profile,
        name_fault,
        read_text,
    )

    try:
        text = read_text(file)
    except ProfileError as error:
        return [error], None
    named = name_fault(file)
    circuit = is_circuit(text)
    faults_of = circuit_faults if circuit else meter_faults
    wrong = [*([named] if named is not None else []), *faults_of(text, str(file))]
    if wrong:
        return wrong, None
    if circuit:
        good = circuit_profile(file.stem, text, str(file))
        try:
            check_in_order(good, str(file))
        except ProfileError as error:
            return [error], None
        return [], good
    return [], meter_profile(file.stem, text, str(file))
