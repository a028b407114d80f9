"""Whether an instrument's calibration was still good on the day it measured."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, timedelta

from meterlog.model.about import About
from meterlog.model.instrument import Instrument
from meterlog.model.iso_date import iso_date


def measured_on(about: About) -> date:
    """Give the day a recording was begun, by the clock of the place it was made at."""
    return (about.started_utc + timedelta(seconds=about.local_offset_s)).date()


def instrument_name(instrument: Instrument) -> str:
    """Give key, model and serial number in words, as far as known."""
    who = instrument.identity
    known = [word for word in (who.maker, who.model) if word]
    if who.serial:
        known.append(f"serial {who.serial}")
    return f"{instrument.key} ({' '.join(known)})" if known else instrument.key


def calibration_words(instrument: Instrument, on_date: date) -> str:
    """Say in one sentence how it stands with an instrument's calibration on a day.

    Parameters
    ----------
    instrument : Instrument
    on_date : date
        The day it measured. The day on which calibration falls due still counts as in time.
    """
    name, stated = instrument_name(instrument), instrument.identity.calibration_due
    if instrument.simulated:
        return f"{name}: simulated, so it has no calibration."
    if not stated:
        return f"{name}: when its calibration is due is not stated."
    due = iso_date(stated)
    if due is None:
        return f"{name}: its calibration is stated as due {stated!r}, which is no date."
    late = (on_date - due).days
    if late <= 0:
        return f"{name}: calibration due {due}."
    days = "1 day" if late == 1 else f"{late} days"
    return f"{name}: calibration was due {due}, {days} before it measured: overdue."


def overdue_words(instruments: Iterable[Instrument], on_date: date) -> tuple[str, ...]:
    """Say of which instruments calibration was overdue on a day, or stated as what is no date.

    Parameters
    ----------
    instruments : iterable of Instrument
    on_date : date
        See :func:`measured_on`.

    Returns
    -------
    tuple of str
        One sentence each. Simulated instruments and those of which nothing is stated are left
        out; :func:`calibration_words` tells them.
    """
    return tuple(calibration_words(one, on_date) for one in instruments if _overdue(one, on_date))


def _overdue(instrument: Instrument, on_date: date) -> bool:
    stated = instrument.identity.calibration_due
    if instrument.simulated or not stated:
        return False
    due = iso_date(stated)
    return due is None or due < on_date
