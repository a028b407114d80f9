"""Whole: every look in its order, those that wait beside those that compute."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor

from meterlog.work.doctor.clocks import look_at_clocks, look_at_sleep
from meterlog.work.doctor.disks import look_at_disks
from meterlog.work.doctor.elsewhere import look_at_elsewhere
from meterlog.work.doctor.files import look_at_key, look_at_profiles, look_at_settings
from meterlog.work.doctor.installed import look_at_installed
from meterlog.work.doctor.look import Line, Look, gathered
from meterlog.work.doctor.rights import look_at_ports
from meterlog.work.doctor.self_test import look_at_bench

LOOKS: Mapping[str, Look] = {
    "program": look_at_installed,
    "ports": look_at_ports,
    "disks": look_at_disks,
    "elsewhere": look_at_elsewhere,
    "clock": look_at_clocks,
    "sleep": look_at_sleep,
    "profiles": look_at_profiles,
    "settings": look_at_settings,
    "signing key": look_at_key,
}


def look_at_all(waiting: Mapping[str, Look], *, bench: bool = True) -> Sequence[Line]:
    """Look at everything.

    Parameters
    ----------
    waiting : mapping of str to Look
        Further looks, which mostly wait, such as for another process; their lines come before
        those of the self-test.
    bench : bool
        Do the self-test, too.

    Returns
    -------
    sequence of Line
        None of them names the user, a vehicle, a job or a serial number.
    """
    late = {**waiting, **({"self-test": look_at_bench} if bench else {})}
    with ThreadPoolExecutor(max_workers=max(1, len(late))) as pool:
        coming = [pool.submit(gathered, about, look) for about, look in late.items()]
        lines = [line for about, look in LOOKS.items() for line in gathered(about, look)]
        for one in coming:
            lines += one.result()
    return lines
