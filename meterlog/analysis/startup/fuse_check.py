"""fuse_check: the steady load and the currents of starts, held against the fuse."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.analysis.judged import Judged
from meterlog.analysis.startup.fuse_load import FuseLoad
from meterlog.analysis.startup.fuse_opening import FuseOpening
from meterlog.analysis.startup.time_above import Exceedances
from meterlog.analysis.taken_back import TakenBack
from meterlog.model import Finding, FuseCheck, StartUp
from meterlog.model.opening_times import opening_table


def fuse_check(
    judged: Judged, startups: Sequence[StartUp], exceedances: Exceedances
) -> tuple[FuseCheck | None, tuple[Finding, ...]]:
    """Hold a recording against the fuse of its limits.

    Parameters
    ----------
    judged : Judged
    startups : sequence of StartUp
        All of the recording's.
    exceedances : Exceedances
        Of the whole recording: :meth:`TimeAbove.exceedances`.

    Returns
    -------
    tuple of FuseCheck or None, and tuple of Finding
        None and no finding where the limits name no fuse.

    Raises
    ------
    ProfileError
        If no opening times are known for the fuse; a profile with such a fuse is refused before.

    Source
    ------
    Kinds of fuses and windows of opening times: ISO 8820-3, as marked row by row in
    ``model/opening_times.py``. Steady load of at most 80 % of the rating: a parts supplier's rule
    (trade practice). Verdict on the load: the limits' decision rule (JCGM 106:2012, 8).
    """
    fuse = judged.limits.fuse
    if fuse is None:
        return None, ()
    table = opening_table(fuse.kind, fuse.rating_a)
    taken_back = TakenBack(judged.instruments, judged.doubts)
    load = FuseLoad(judged, fuse, taken_back, startups)
    opening = FuseOpening(judged, fuse, table, startups, exceedances)
    check = FuseCheck(
        rating_a=fuse.rating_a,
        kind=fuse.kind,
        load=load.budget,
        speed=load.speed,
        max_load_percent=fuse.max_load_percent,
        load_verdict=load.verdict,
        load_probability=load.judged.probability,
        margins=opening.margins,
        nuisance=opening.verdict,
        words=f"{load.words} {opening.words}",
    )
    return check, (*load.findings(), *opening.findings())
