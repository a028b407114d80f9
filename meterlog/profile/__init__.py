"""Profiles: TOML files to typed descriptions of meters, limits and circuits."""

from meterlog.profile.catalogue import (
    ListedProfile,
    listed,
    load_circuit,
    load_limits,
    load_listed_meters,
    load_meter,
    name_fault,
    names,
    profile_file,
)
from meterlog.profile.circuit import circuit_faults, circuit_profile, is_circuit
from meterlog.profile.folders import settings_folder, shipped_folder, user_folder
from meterlog.profile.limits import limits_profile
from meterlog.profile.link_settings import HidBridge, LinkSettings
from meterlog.profile.meter import DIALECTS, MeterProfile
from meterlog.profile.meter_file import meter_faults, meter_profile
from meterlog.profile.table import read_text
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
    "ListedProfile",
    "MeterProfile",
    "ModbusTalk",
    "Recognition",
    "Register",
    "ScpiTalk",
    "circuit_faults",
    "circuit_profile",
    "is_circuit",
    "limits_profile",
    "listed",
    "load_circuit",
    "load_limits",
    "load_listed_meters",
    "load_meter",
    "meter_faults",
    "meter_profile",
    "name_fault",
    "names",
    "profile_file",
    "read_text",
    "settings_folder",
    "shipped_folder",
    "user_folder",
]
