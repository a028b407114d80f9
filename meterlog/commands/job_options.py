"""The options that say whose vehicle it is, which part, and why."""

from __future__ import annotations

import argparse
import math
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from meterlog.model import Conditions, Job

CONDITION_NAMES = (
    "engine", "filter", "air", "intake", "housing", "place", "windows", "control",
    "ambient_c", "running_min", "battery_v",
)  # fmt: skip
_NUMBERS = CONDITION_NAMES[-3:]
_FIELDS = {
    "work_order": "number of the work order",
    "vehicle": "which vehicle, in words",
    "odometer": "its distance, with unit",
    "complaint": "what is wrong, in the customer's own words",
    "part": "number and serial of the motor measured",
    "technician": "who measures",
    "conditions": "key, engine, filter, flap, ambient temperature",
}


def add_job_options(parser: argparse.ArgumentParser) -> None:
    """Add one option for each field of a Job; none is mandatory."""
    group = parser.add_argument_group("job (kept with the recording, none is mandatory)")
    for field, words in _FIELDS.items():
        group.add_argument(f"--{field.replace('_', '-')}", metavar="TEXT", default="", help=words)
    group.add_argument(
        "--condition",
        metavar="NAME=VALUE",
        action="append",
        default=[],
        help="what the current depends on besides the fan, in words that can be compared; repeat"
        f" for each of: {', '.join(CONDITION_NAMES)} (as in filter=used, ambient_c=21)",
    )


def job_from(options: argparse.Namespace) -> Job:
    """Give the Job that the options describe.

    Raises
    ------
    UsageError
        If a text is not one that a file can hold.
    """
    from meterlog.model import Job
    from meterlog.model.errors import UsageError

    job = {field: getattr(options, field) for field in _FIELDS}
    for field, text in job.items():
        try:
            text.encode()
        except UnicodeEncodeError:
            raise UsageError(
                "holds bytes that are no UTF-8 text.",
                subject=f"--{field.replace('_', '-')}",
                remedy="Type it again, or set the terminal to UTF-8.",
            ) from None
    return Job(**job, measured_under=_conditions(options.condition))


def _conditions(entries: Sequence[str]) -> Conditions:
    from meterlog.model import Conditions
    from meterlog.model.errors import UsageError

    # Any: the type checker can't tell which fields these are.
    stated: dict[str, Any] = {}
    for entry in entries:
        name, equals, value = (part.strip() for part in entry.partition("="))
        if not equals or name not in CONDITION_NAMES:
            raise UsageError(
                "is no condition.",
                subject=f"--condition {entry}",
                remedy=f"Give NAME=VALUE with one of: {', '.join(CONDITION_NAMES)}.",
            )
        if name not in _NUMBERS:
            stated[name] = value
            continue
        try:
            stated[name] = float(value.replace(",", "."))
        except ValueError:
            stated[name] = math.nan
        if not math.isfinite(stated[name]):
            raise UsageError(
                f"is no number: {value!r}.",
                subject=f"--condition {name}",
                remedy="Give digits without a unit, such as ambient_c=21.",
            )
    return Conditions(**stated)
