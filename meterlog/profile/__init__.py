"""Profiles: TOML files to typed descriptions of meters and limits."""

from meterlog.profile.catalogue import (
    load_limits,
    load_meter,
    names,
    profile_file,
)
from meterlog.profile.folders import settings_folder, shipped_folder, user_folder
from meterlog.profile.limits import limits_profile
from meterlog.profile.link_settings import HidBridge, LinkSettings
from meterlog.profile.meter import DIALECTS, MeterProfile
from meterlog.profile.meter_file import meter_faults, meter_profile
from meterlog.profile.talk import (
    BlockLayout,
    LineFormat,
    ModbusTalk,
    Recognition,
    Register,
    ScpiTalk,
)

__all__ = [
    "DIALECTS",
    "BlockLayout",
    "HidBridge",
    "LineFormat",
    "LinkSettings",
    "MeterProfile",
    "ModbusTalk",
    "Recognition",
    "Register",
    "ScpiTalk",
    "limits_profile",
    "load_limits",
    "load_meter",
    "meter_faults",
    "meter_profile",
    "names",
    "profile_file",
    "settings_folder",
    "shipped_folder",
    "user_folder",
]
