"""CardField: what each field of a job card is called, and how it may travel."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class CardField:
    """One field of a job card.

    Attributes
    ----------
    key : str
        Name of the field; ``old_part.serial`` for one of a part.
    words : str
        How a person calls it, without capital.
    customer : bool
        Says who or whose vehicle it is: left out of a pack without customer data.
    once : bool
        Belongs to this one job: a template never holds it, or it would slip into the next claim.
    """

    key: str
    words: str
    customer: bool = False
    once: bool = False


def _part(key: str, words: str) -> tuple[CardField, ...]:
    return (
        CardField(f"{key}.name", f"{words}, name"),
        CardField(f"{key}.number", f"{words}, part number"),
        CardField(f"{key}.serial", f"{words}, serial number", once=True),
        CardField(f"{key}.date_code", f"{words}, date code", once=True),
    )


FIELDS = (
    CardField("work_order", "work order", once=True),
    CardField("claim_number", "claim number", once=True),
    CardField("claimant", "workshop that claims"),
    CardField("customer", "customer", customer=True, once=True),
    CardField("vehicle", "vehicle"),
    CardField("plate", "plate", customer=True, once=True),
    CardField("vin", "VIN", customer=True, once=True),
    CardField("in_service", "in service since", once=True),
    CardField("odometer", "odometer in", once=True),
    CardField("odometer_out", "odometer out", once=True),
    CardField("hours", "hours", once=True),
    CardField("complaint", "complaint, in the customer's words", once=True),
    CardField("cause", "cause", once=True),
    CardField("correction", "correction"),
    CardField("fault_codes", "fault codes", once=True),
    CardField("failed_on", "failed on", once=True),
    CardField("repaired_on", "repaired on", once=True),
    *_part("old_part", "old part"),
    CardField("old_part_fitted", "old part fitted on, at", once=True),
    CardField("old_part_kept", "old part kept at"),
    *_part("new_part", "new part"),
    CardField("invoice", "new part's invoice", once=True),
    CardField("fitted_by", "fitted by"),
    CardField("technician", "measured by"),
    CardField("labour", "labour"),
    CardField("ambient", "ambient", once=True),
    CardField("battery", "battery", once=True),
    CardField("filter", "filter", once=True),
    CardField("flap", "flap", once=True),
    CardField("maintenance", "maintenance before", once=True),
    CardField("notes", "notes", once=True),
    CardField("photos", "photos", once=True),
)
"""In the order in which a card is shown."""

ASKED = (
    (("vin", "plate"), "VIN or plate of the vehicle is not stated."),
    (("odometer", "hours"), "Odometer or hours are not stated."),
    (("complaint",), "The complaint, in the customer's own words, is not stated."),
    (("cause",), "The cause is not stated."),
    (("correction",), "The correction, what was done, is not stated."),
    (("old_part.number",), "The old part's number is not stated."),
    (("old_part.serial",), "The old part's serial number is not stated."),
    (("old_part.date_code",), "The old part's date code is not stated."),
    (("failed_on",), "The date of failure is not stated."),
    (("repaired_on",), "The date of repair is not stated."),
    (("claim_number", "work_order"), "Claim number or work order is not stated."),
    (("vehicle",), "Make, model and year of the vehicle are not stated."),
    (("old_part_fitted",), "When, and at what odometer, the old part was fitted is not stated."),
    (("in_service",), "Since when the vehicle is in service is not stated."),
    (("new_part.number",), "The new part's number is not stated."),
    (("new_part.serial",), "The new part's serial number is not stated."),
    (("new_part.date_code",), "The new part's date code is not stated."),
    (("invoice",), "Number and date of the new part's invoice are not stated."),
    (("technician",), "Who measured is not stated."),
    (("fitted_by",), "Who fitted the new part is not stated."),
    (("photos",), "There is no photo: label with date code, odometer, plug, filter."),
    (("old_part_kept",), "Where the old part is kept is not stated."),
    (("claimant",), "The workshop that claims, with a contact, is not stated."),
    (("labour",), "Operation code and labour hours are not stated."),
    (("filter",), "The state of the filter is not stated."),
    (("battery",), "The state of the battery is not stated."),
    (("flap",), "The position of the flap is not stated."),
    (("ambient",), "The ambient temperature is not stated."),
    (("fault_codes",), "Fault codes, or that there were none, are not stated."),
    (("odometer_out",), "The odometer when the vehicle left is not stated."),
    (("maintenance",), "Earlier maintenance is not stated."),
)
"""What claim forms ask for: one of the fields is enough; and how its absence is told. The fields
are those that published forms agree on; their order is common practice, no source."""
