"""JobCard: what a warranty claim says besides the readings."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class PartIdentity:
    """A motor, controller or other part, as its label says. Empty means not stated.

    Attributes
    ----------
    name, number, serial, date_code : str
        ``name`` in words, such as ``fan motor``.
    """

    name: str = ""
    number: str = ""
    serial: str = ""
    date_code: str = ""


@dataclass(frozen=True, slots=True)
class JobCard:
    """What the work order says. Nothing is mandatory; empty means not stated.

    Attributes
    ----------
    work_order, claim_number : str
    customer, vehicle, plate, vin : str
        Customer data: left out of a pack without them. ``vehicle`` is make, model and year, and
        stays in it.
    odometer, hours : str
        With their unit, as read.
    complaint, cause, correction : str
        ``complaint`` in the customer's own words.
    failed_on, repaired_on : str
        Dates, ISO 8601 (``2026-11-29``).
    old_part, new_part : PartIdentity
    fitted_by : str
    ambient, battery, filter, flap : str
        State of each as found.
    old_part_kept : str
        Where the part that was taken out lies.
    notes : str
    photos : tuple of str
        Paths of picture files.
    """

    work_order: str = ""
    claim_number: str = ""
    customer: str = ""
    vehicle: str = ""
    plate: str = ""
    vin: str = ""
    odometer: str = ""
    hours: str = ""
    complaint: str = ""
    cause: str = ""
    correction: str = ""
    failed_on: str = ""
    repaired_on: str = ""
    old_part: PartIdentity = PartIdentity()
    new_part: PartIdentity = PartIdentity()
    fitted_by: str = ""
    ambient: str = ""
    battery: str = ""
    filter: str = ""
    flap: str = ""
    old_part_kept: str = ""
    notes: str = ""
    photos: tuple[str, ...] = ()
