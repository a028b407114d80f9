"""The options that say whose vehicle it is, which part, and why."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from meterlog.model import Job

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
    return Job(**job)
