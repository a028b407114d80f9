"""Part numbers: which motors are of one kind, and which recordings are of one motor."""

from __future__ import annotations

import hashlib
import re

from meterlog.model.errors import UsageError

_SERIAL = re.compile(
    r"\b(?:(?:serial|ser\.)(?:\s*(?:number|no|nr))?|serien(?:nummer|-?nr)|s\s*/\s*n|s\.\s?n"
    # Without a blank behind it, it may as well be how a part number begins.
    r"|(?<=[,;/(\s])sn(?=\d)|sn(?!\w))(?=[\W\d]|$)[.:#\s]*",
    re.I,
)
_NUMBER = re.compile(r"\b(?:part\s+(?:number|no\b)|p\s*/\s*n)(?=[\W\d]|$)[.:#\s]*", re.I)
_NAMED = re.compile(r"^\s*(?:fan\s+motor|blower\s+motor|motor|part)\b[:\s]*", re.I)
_BETWEEN = ",;/( \t\r\n\f\v"


def number_pattern(text: str) -> re.Pattern[str]:
    """Read the pattern that finds a part number.

    Raises
    ------
    UsageError
        If it is no regular expression.
    """
    try:
        return re.compile(text)
    except (re.error, RecursionError, OverflowError) as error:
        raise UsageError(
            f"is no regular expression: {error}.",
            subject="--number",
            remedy=r"Such as --number '[A-Z]{2}-\d{4}'; its first group counts, where it has one.",
        ) from error


def part_number(part: str, pattern: re.Pattern[str] | None) -> str:
    """Give the part number out of what a recording says of its part.

    Parameters
    ----------
    part : str
        Number and serial in free words.
    pattern : Pattern or None
        What it finds, or its first group, is the number. None: all before a word for a serial
        number, and behind a word for a part number or for a motor.

    Returns
    -------
    str
        In capital letters, blanks run together; empty where there is none.
    """
    if pattern is not None:
        found = pattern.search(part)
        text = "" if found is None else str(found[1 if pattern.groups else 0] or "")
    else:
        # Stripped afterwards: looked for before the word, blanks without end would take for ever.
        text = _NAMED.sub("", _SERIAL.split(_about(part)[0], 1)[0].rstrip(_BETWEEN))
        # Without a digit it is a name, and motors of many kinds are called alike.
        text = text if _has_digit(text) else ""
    return " ".join(text.split()).strip(",;:/ ").upper()


def _about(part: str) -> tuple[str, str]:
    """Part what is said from a word for a part number on from what stands before it.

    Where no digit follows the word, it stands behind the number.
    """
    before, *behind = _NUMBER.split(part, 1)
    if not behind:
        return part, ""
    return (behind[0], before) if _has_digit(behind[0]) else (before, behind[0])


def _has_digit(text: str) -> bool:
    return any(letter.isdigit() for letter in text)


def motor_of(part: str, serial: str, vehicle: str, number: str) -> str:
    """Give what tells this motor from others of its number; empty where nothing does.

    Parameters
    ----------
    part : str
        In free words.
    serial : str
        By the job's card; empty: what ``part`` says beside the number.
    vehicle : str
        Stands for the motor where no serial is known. Not shown: a digest of it is, as tables are
        handed on and vehicles are customers'.
    number : str
    """
    if serial.strip():
        return " ".join(serial.split()).upper()
    about, beside = _about(part)
    for one in (about, beside):
        after = _SERIAL.split(one, 1)[1:]
        told = " ".join(after[0].split()).strip(",;:/ ").upper() if after else ""
        if told:
            return told
    said = " ".join(about.split()).upper()
    rest = said.replace(number, "", 1).strip(",;:/ ") if number else ""
    if rest and _has_digit(rest):
        return rest
    if vehicle.strip():
        text = " ".join(vehicle.split()).casefold().encode("utf-8", "replace")
        return "vehicle " + hashlib.blake2b(text, digest_size=6).hexdigest()
    return ""
