"""JobCard: what a warranty claim says besides the readings."""

from __future__ import annotations

import difflib
import re
import unicodedata
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields, replace
from typing import Any

from meterlog.model.card_fields import ASKED, FIELDS
from meterlog.model.errors import UsageError
from meterlog.model.vin import plain_vin

_PARTS = ("old_part", "new_part")
_PHOTOS = "photos"
_LEFT_OUT = "[left out]"
_LEAST_LETTERS = 4
"""A shorter plate or name would be found within other words' meaning, such as a connector C3."""
_TRADE = frozenset(
    {
        *("motor", "motors", "auto", "autos", "cars", "truck", "trucks", "garage", "service"),
        *("repair", "workshop", "fleet", "rental", "taxi", "speed", "fuse", "relay", "ground"),
        *("battery", "plug", "feed", "return", "connector", "controller", "street", "road"),
        "phone",
    }
)
"""Words that a customer's entry may have, and without which a claim can't be read."""
_NAMED = ("vehicle", *_PARTS)
"""Where makers' names stand; a single word of the customer's entry is not sought there."""


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
        Paths of picture files; relative ones from the folder of the card's file.
    claimant, technician : str
        The workshop with a contact; who measured.
    in_service, old_part_fitted : str
        Since when the vehicle is in service; when, and at what odometer, the old part was fitted.
    invoice, labour : str
        Of the new part; operation code and hours.
    odometer_out, fault_codes, maintenance : str
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
    claimant: str = ""
    technician: str = ""
    in_service: str = ""
    old_part_fitted: str = ""
    invoice: str = ""
    labour: str = ""
    odometer_out: str = ""
    fault_codes: str = ""
    maintenance: str = ""


def value_of(card: JobCard, key: str) -> str:
    """Give what a card says under ``key``, such as ``old_part.serial``; photos one a line.

    Raises
    ------
    UsageError
        If a card has no such field.
    """
    key = _known(key)
    if key == _PHOTOS:
        return "\n".join(card.photos)
    part, dot, field = key.partition(".")
    return str(getattr(getattr(card, part), field) if dot else getattr(card, key))


def with_value(card: JobCard, key: str, text: str) -> JobCard:
    """Give the card with another value under ``key``; blanks around it are dropped.

    Raises
    ------
    UsageError
        If a card has no such field, or the text is none that a file can hold.
    """
    key = _known(key)
    text = _clean(text, key, "").strip()
    if key == _PHOTOS:
        return replace(card, photos=tuple(line for line in text.splitlines() if line.strip()))
    part, dot, field = key.partition(".")
    # Any: the type checker can't tell which field this is.
    changed: dict[str, Any] = {key: text}
    if dot:
        changed = {part: replace(getattr(card, part), **{field: text})}
    return replace(card, **changed)


def _known(key: str) -> str:
    plain = key.strip().lower().replace("-", "_")
    names = [field.key for field in FIELDS]
    if plain in names:
        return plain
    near = difflib.get_close_matches(plain, names, 3)
    remedy = f"Did you mean {' or '.join(near)}?" if near else f"There are: {', '.join(names)}."
    raise UsageError("is no field of a job card.", subject=key, remedy=remedy)


def filled(card: JobCard, template: JobCard) -> JobCard:
    """Give the card with its empty fields as the template has them."""
    for field in FIELDS:
        if not value_of(card, field.key):
            card = with_value(card, field.key, value_of(template, field.key))
    return card


def for_template(card: JobCard) -> JobCard:
    """Give the card without all that belongs to one job only."""
    return _cleared(card, (field.key for field in FIELDS if field.once))


def _cleared(card: JobCard, keys: Iterable[str]) -> JobCard:
    for key in keys:
        card = with_value(card, key, "")
    return card


def missing_words(card: JobCard) -> tuple[str, ...]:
    """Say what reviewers ask for and the card does not say, most asked for first.

    Parameters
    ----------
    card : JobCard
        Whole: one without customer data lacks them on purpose.
    """
    return tuple(
        words for keys, words in ASKED if not any(value_of(card, key).strip() for key in keys)
    )


def without_customer(card: JobCard) -> JobCard:
    """Give the card without what says who or whose vehicle it is.

    Customer, plate and VIN go. Where another text repeats one of them, a part of the customer's
    entry between commas or line ends, or (but in the names of vehicle and parts) a word of it with
    a capital and four letters or more that is none of the trade's, ``[left out]`` stands instead;
    of the VIN its last eight and last six characters count too. Other hints in free words nobody
    can find by rule, and names of photos stay, as the files could not be found otherwise.
    """
    pattern, whole = customer_pattern(card), customer_pattern(card, single=False)
    bare = _cleared(card, (field.key for field in FIELDS if field.customer))
    if pattern is None or whole is None:
        return bare
    for field in FIELDS:
        if field.key != _PHOTOS:
            text = value_of(bare, field.key)
            sought = whole if field.key.partition(".")[0] in _NAMED else pattern
            bare = with_value(bare, field.key, sought.sub(_LEFT_OUT, text))
    return bare


def customer_pattern(card: JobCard, *, single: bool = True) -> re.Pattern[str] | None:
    """Give what finds customer, plate and VIN of a card in a text, as :func:`without_customer`.

    Parameters
    ----------
    card : JobCard
    single : bool
        Find single words of the customer's entry, too.

    Returns
    -------
    re.Pattern or None
        None where the card says none of them.
    """
    told = _telling(card, single=single)
    if not told:
        return None
    return re.compile(rf"(?<!\w)(?:{'|'.join(told)})(?!\w)", re.IGNORECASE)


def _telling(card: JobCard, *, single: bool) -> list[str]:
    """Give patterns of the texts that tell whose vehicle it is, the longest first."""
    vin = plain_vin(card.vin)
    names = re.findall(r"[^\W\d_]+", card.customer) if single else []
    names = [one for one in names if not one.islower() and one.lower() not in _TRADE]
    texts = [*re.split(r"[,;\n]", card.customer), *names, card.plate, vin]
    if len(vin) > 8:
        texts += [vin[-8:], vin[-6:]]
    words = {re.sub(r"[\W_]+", "", text) for text in texts}
    known = sorted((word for word in words if len(word) >= _LEAST_LETTERS), key=len, reverse=True)
    return [r"[\W_]{0,3}".join(re.escape(letter) for letter in word) for word in known]


def card_to_dict(card: JobCard) -> dict[str, object]:
    """Give a card as a JSON object; every field is there, empty ones too."""
    values: dict[str, object] = {}
    for field in fields(JobCard):
        value = getattr(card, field.name)
        if isinstance(value, PartIdentity):
            value = {one.name: getattr(value, one.name) for one in fields(PartIdentity)}
        values[field.name] = list(value) if isinstance(value, tuple) else value
    return values


def card_of(values: object, subject: str = "job card") -> JobCard:
    """Read a card from a JSON object. Fields that are not there are empty.

    Parameters
    ----------
    values : object
        As ``json`` gives it.
    subject : str
        The file, for messages.

    Raises
    ------
    UsageError
        If it is no object, has a key that no card has, or a value of the wrong type; names file
        and key.
    """
    found = _object(values, JobCard, "", subject)
    # Any: the type checker can't tell which fields these are.
    read: dict[str, Any] = {}
    for key, value in found.items():
        if key in _PARTS:
            part = _object(value, PartIdentity, f"{key}.", subject)
            words = {name: _text(one, f"{key}.{name}", subject) for name, one in part.items()}
            read[key] = PartIdentity(**words)
        elif key == _PHOTOS:
            if not isinstance(value, list):
                raise _wrong(f"{key} is {_short(value)}, not a list of texts.", subject)
            read[key] = tuple(
                _text(one, f"{key}[{index}]", subject) for index, one in enumerate(value)
            )
        else:
            read[key] = _text(value, key, subject)
    return JobCard(**read)


def _object(values: object, kind: type, lead: str, subject: str) -> Mapping[str, object]:
    if not isinstance(values, Mapping):
        what = lead.rstrip(".") or "the file"
        raise _wrong(f"{what} is {_short(values)}, not an object.", subject)
    names = [field.name for field in fields(kind)]
    for key in values:
        if key not in names:
            raise _wrong(
                f"{lead}{key} is no field of a job card; there are: {', '.join(names)}.", subject
            )
    return values


def _text(value: object, key: str, subject: str) -> str:
    if not isinstance(value, str):
        raise _wrong(f"{key} is {_short(value)}, not a text.", subject)
    return _clean(value, key, subject)


def _clean(text: str, key: str, subject: str) -> str:
    """Refuse what no report can show: control characters and halves of characters."""
    for letter in text:
        if unicodedata.category(letter) in {"Cc", "Cs"} and letter not in "\n\t":
            raise _wrong(f"{key} holds the character {letter!a}, which is no text.", subject)
    return text


def _short(value: object) -> str:
    said = repr(value)
    return said if len(said) <= 40 else f"{said[:37]}..."


def _wrong(message: str, subject: str) -> UsageError:
    return UsageError(message, subject=subject, remedy="Put it right; nothing was changed.")
