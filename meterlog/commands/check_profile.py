"""``meterlog check-profile``: every fault of a profile, or what it says and where it belongs."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.terminal import answer, answer_json

if TYPE_CHECKING:
    from meterlog.model.errors import ProfileError
    from meterlog.profile import MeterProfile

_WORDS = """\
Checks meter profiles against the published schema (profiles/meter.schema.json) and for keys that
contradict each other. Names every fault with file, line, key and what was expected. Of a good
profile it shows how the meter is talked to, its channels and their accuracy, and where the file
belongs so that it is found by its name. Exit code 1 when there is any fault."""


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command's options."""
    parser = add_command(
        subparsers, "check-profile", _WORDS, "meterlog check-profile my-meter.toml"
    )
    parser.add_argument("files", metavar="FILE", nargs="+", type=Path, help="a profile")
    parser.add_argument("--json", action="store_true", help="print one JSON object instead")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Check the files; 1 when any is wrong."""
    from meterlog.commands.profile_report import place_of, profile_json, summary

    checked: list[dict[str, object]] = []
    said: list[str] = []
    for file in options.files:
        wrong, profile = _check(file)
        if profile is not None:
            said.append(summary(file, profile))
            checked.append(
                {"file": str(file), "faults": [], "profile": profile_json(profile)}
                | place_of(file).as_json()
            )
            continue
        faults = [
            {"where": error.subject, "message": error.message, "remedy": error.remedy}
            for error in wrong
        ]
        checked.append({"file": str(file), "faults": faults, "profile": None})
        many = "1 fault" if len(wrong) == 1 else f"{len(wrong)} faults"
        said.append("\n".join((f"{file}: {many}.", *(f"  {error}" for error in wrong))))
    if options.json:
        answer_json({"profiles": checked})
    else:
        answer("\n\n".join(said))
    return 1 if any(one["faults"] for one in checked) else 0


def _check(file: Path) -> tuple[list[ProfileError], MeterProfile | None]:
    from meterlog.model.errors import ProfileError
    from meterlog.profile import meter_faults, meter_profile, name_fault, read_text

    try:
        text = read_text(file)
    except ProfileError as error:
        return [error], None
    named = name_fault(file)
    wrong = [*([named] if named is not None else []), *meter_faults(text, str(file))]
    return (wrong, None) if wrong else ([], meter_profile(file.stem, text, str(file)))
