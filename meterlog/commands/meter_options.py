"""The options that say what a meter's label and certificate say."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from typing import TYPE_CHECKING

from meterlog.commands.terminal import remark

if TYPE_CHECKING:
    from meterlog.model import About
    from meterlog.work.kept_meters import StatedMeter


def add_meter_options(parser: argparse.ArgumentParser) -> None:
    """Add one option for each thing that can be stated of a meter; none is mandatory."""
    group = parser.add_argument_group(
        "meters (none is mandatory)",
        "Kept for later recordings by the meter's serial number, else by that of its USB adapter."
        "\nPROFILE-2 is the second meter of one profile. An empty TEXT takes back what was kept.",
    )
    for name, metavar, words in (
        ("calibration", "PROFILE=DATE", "when its calibration is due, such as 2027-01-31"),
        ("serial", "PROFILE=TEXT", "serial number on its label, if it does not say it itself"),
        ("model", "PROFILE=TEXT", "model on its label, likewise"),
    ):
        group.add_argument(f"--{name}", metavar=metavar, action="append", default=[], help=words)


def stated_meters(options: argparse.Namespace) -> dict[str, StatedMeter]:
    """Give what the options state, by the key of the meter.

    Raises
    ------
    UsageError
        If an option does not say which meter, says one thing twice, or a date is none.
    """
    from meterlog.model.errors import UsageError
    from meterlog.model.iso_date import iso_date
    from meterlog.work.kept_meters import StatedMeter

    dues = _by_key(options.calibration, "calibration")
    for key, text in dues.items():
        if text and iso_date(text) is None:
            raise UsageError(
                f"is no date: {text!r}.",
                subject=f"--calibration {key}",
                remedy="Give year-month-day, such as 2027-01-31.",
            )
    serials = _by_key(options.serial, "serial")
    models = _by_key(options.model, "model")
    return {
        key: StatedMeter(models.get(key), serials.get(key), dues.get(key))
        for key in (*dues, *serials, *models)
    }


def _by_key(entries: Sequence[str], option: str) -> dict[str, str]:
    from meterlog.model.errors import UsageError

    found: dict[str, str] = {}
    for entry in entries:
        key, equals, text = (part.strip() for part in entry.partition("="))
        if not (key and equals) or key in found or not text.isprintable():
            what = "is given twice" if key in found else "does not say what of which meter"
            raise UsageError(
                f"{what}.",
                subject=f"--{option} {entry}",
                remedy=f"Give PROFILE={_LIKE[option]} once for each meter.",
            )
        found[key] = text
    return found


_LIKE = {"calibration": "2027-01-31", "serial": "4711", "model": "M-100"}


def say_overdue(about: About | None) -> None:
    """Tell of which meters of a recording the calibration is overdue."""
    from meterlog.model.calibration import measured_on, overdue_words

    if about is not None:
        for words in overdue_words(about.instruments, measured_on(about)):
            remark(words)
