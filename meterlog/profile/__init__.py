"""Profiles: TOML files to typed descriptions of meters and limits."""

from meterlog.profile.catalogue import load_limits, load_meter, names, shipped_folder
from meterlog.profile.limits import limits_profile
from meterlog.profile.meter import (
    DIALECTS,
    LineFormat,
    LinkSettings,
    MeterProfile,
    ScpiTalk,
    meter_profile,
)

__all__ = [
    "DIALECTS",
    "LineFormat",
    "LinkSettings",
    "MeterProfile",
    "ScpiTalk",
    "limits_profile",
    "load_limits",
    "load_meter",
    "meter_profile",
    "names",
    "shipped_folder",
]
