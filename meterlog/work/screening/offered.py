"""Offered: what a screening knows of a part, for faces that show it beside single recordings."""

from __future__ import annotations

from pathlib import Path

from meterlog.work.baseline_tables import table_at, usual_screening
from meterlog.work.screening.baselines import Baseline, baselines_of
from meterlog.work.screening.part_numbers import part_number


def baselines_for(
    part: str, *, simulated: bool = False, nominal_v: float | None = None, table: Path | None = None
) -> tuple[Baseline, ...]:
    """Give what good motors of a recording's part draw, lowest speed first.

    Parameters
    ----------
    part : str
        As a recording says it, or a part number.
    simulated : bool
        The recording is; a simulated fan is held against simulated ones only.
    nominal_v : float or None, volts
        None: any.
    table : Path or None
        Of baselines, or a screening's folder; None: the usual one.

    Returns
    -------
    tuple of Baseline
        Empty where nothing was screened, or nothing good of this number was found.

    Raises
    ------
    EvidenceError
        If a table is there and can't be read.
    """
    number = part_number(part, None)
    path = table_at(usual_screening() if table is None else table)
    if not number or not path.is_file():
        return ()
    origin = "simulated" if simulated else "measured"
    return baselines_of(path, number, origin=origin, nominal_v=nominal_v)
