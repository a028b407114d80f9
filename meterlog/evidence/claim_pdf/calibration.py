"""Calibration: whether a meter's calibration was in date when it was used, in words."""

from __future__ import annotations

from meterlog.evidence.claim_content import ClaimContent
from meterlog.evidence.claim_pdf.page_edges import side_title
from meterlog.model import About, Instrument
from meterlog.model.calibration import measured_on
from meterlog.model.iso_date import iso_date
from meterlog.recording import UNDATED

OVERDUE = "OVERDUE"
IN_DATE = "in date"
NOT_STATED = "not stated"
CANT_TELL = "can't be told"


def meter_name(instrument: Instrument) -> str:
    """Give maker, model and serial number, as far as stated, else the key it goes by."""
    who = instrument.identity
    serial = f"serial {who.serial}" if who.serial else ""
    return " ".join(part for part in (who.maker, who.model, serial) if part) or instrument.key


def calibration_state(instrument: Instrument, about: About) -> str:
    """Tell whether a meter was in date on the day of a recording.

    Parameters
    ----------
    instrument : Instrument
    about : About
        Of the recording it was used in.

    Returns
    -------
    str
        :data:`OVERDUE`, :data:`IN_DATE`, :data:`NOT_STATED`, or :data:`CANT_TELL` where the
        recording has no date or what is stated is none.
    """
    stated = instrument.identity.calibration_due.strip()
    if not stated:
        return NOT_STATED
    due = iso_date(stated)
    if due is None or about.started_utc == UNDATED:
        return CANT_TELL
    return OVERDUE if measured_on(about) > due else IN_DATE


def calibration_lines(content: ClaimContent) -> list[str]:
    """Name the meters whose calibration was not in date, each once, the overdue ones first."""
    worst: dict[str, tuple[int, str]] = {}
    for side in content.recordings:
        about = side.recording.about
        for one in about.instruments:
            state = calibration_state(one, about)
            words = _words(one, state, side_title(side).lower())
            if words and words[0] < worst.get(meter_name(one), (9, ""))[0]:
                worst[meter_name(one)] = words
    return [words for _, words in sorted(worst.values())]


def _words(one: Instrument, state: str, used: str) -> tuple[int, str] | None:
    name, due = meter_name(one), one.identity.calibration_due
    if one.simulated or state == IN_DATE:
        return None
    if state == OVERDUE:
        return 0, f"{name}: calibration OVERDUE: it was due {due}, and used after that ({used})."
    if state == CANT_TELL:
        return 1, f"{name}: calibration due {due}; whether it was in date can't be told."
    return 2, f"{name}: when its calibration is due is not stated."
