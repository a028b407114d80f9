"""What no schema can say of a meter profile: keys that do not go together."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from meterlog.model import Accuracy, Channel
from meterlog.model.errors import ProfileError
from meterlog.profile.meter import MeterProfile
from meterlog.profile.schema import fault_at
from meterlog.profile.talk import LONGEST_BLOCK
from meterlog.profile.toml_lines import Place

Fault = tuple[Place, str, str]
_TABLES = {
    "scpi": ("scpi", "scpi-blocks"),
    "blocks": ("scpi-blocks",),
    "lines": ("ascii-lines",),
    "modbus": ("modbus-rtu",),
}
"""Which dialects read which table."""
_SKIPPED, _TIME = "-", "time"
_REGISTERS = 65_536
_NUMBER_BYTES = {"real32": 4, "real64": 8, "int16": 2}


def contradictions(profile: MeterProfile, values: Mapping[str, object]) -> list[ProfileError]:
    """Find keys that are right each by itself and wrong together.

    Parameters
    ----------
    profile : MeterProfile
        As read; it fits the schema.
    values : mapping
        The TOML it was read from.

    Returns
    -------
    list of ProfileError
        Each names file, line, key and what to do.
    """
    found = [*_unused(profile, values), *_names(profile)]
    if profile.dialect == "ascii-lines":
        found += _columns(profile)
    if profile.dialect == "scpi-blocks":
        found += _block(profile)
    for index, channel in enumerate(profile.channels):
        found += _channel(("channels", index), profile, channel)
    return [fault_at(profile.text, profile.source, *fault) for fault in found]


def _unused(profile: MeterProfile, values: Mapping[str, object]) -> Iterator[Fault]:
    for table, dialects in _TABLES.items():
        if table in values and profile.dialect not in dialects:
            remedy = f"It belongs to {' and '.join(dialects)}: leave it out, or change dialect."
            yield (table,), f"is not used by the dialect {profile.dialect}", remedy


def _names(profile: MeterProfile) -> Iterator[Fault]:
    names = [channel.name for channel in profile.channels]
    for index, name in enumerate(names):
        if name in names[:index]:
            place: Place = ("channels", index, "name")
            yield place, f"repeats a name: {', '.join(names)}", "Names must differ."


def _columns(profile: MeterProfile) -> Iterator[Fault]:
    layout = profile.lines
    if layout.delimiter == layout.decimal:
        yield ("lines", "decimal"), "equals the delimiter", "They must differ."
    names = [channel.name for channel in profile.channels]
    if _TIME in names:
        place: Place = ("channels", names.index(_TIME), "name")
        yield place, "is 'time', which is the device's own clock", "Choose another name."
        return
    named = [column for column in layout.columns if column not in {_SKIPPED, _TIME}]
    if sorted(named) != sorted(names):
        what = f"name {', '.join(named) or 'nothing'}, but the channels are {', '.join(names)}"
        yield ("lines", "columns"), what, "Every channel needs exactly one column."
    if layout.columns.count(_TIME) > 1:
        yield ("lines", "columns"), "name time more than once", "Skip the others by '-'."


def _block(profile: MeterProfile) -> Iterator[Fault]:
    row_bytes = len(profile.channels) * _NUMBER_BYTES[profile.blocks.number]
    most = LONGEST_BLOCK // row_bytes
    if profile.blocks.rows > most:
        what = f"makes blocks longer than {LONGEST_BLOCK // 2**20} MiB, which are refused"
        yield ("blocks", "rows"), what, f"At most {most} rows of {row_bytes} bytes."


def _channel(place: Place, profile: MeterProfile, channel: Channel) -> Iterator[Fault]:
    if channel.integration_s > 0 and profile.typed:
        key: Place = ("integration_s",) if profile.integration_s else (*place, "integration_s")
        yield key, "is above 0, but what is typed is not integrated", "Leave it out."
    if channel.accuracy is not None and not channel.ranges:
        yield from _accuracy((*place, "accuracy"), channel.accuracy)
    tops = [one.top for one in channel.ranges]
    if len(set(tops)) != len(tops):
        said = ", ".join(f"{top:g}" for top in tops)
        yield (*place, "ranges"), f"repeat a top: {said}", "Each range needs a top of its own."
    for one in channel.ranges:
        yield from _accuracy((*place, "ranges"), one.accuracy)
    if profile.dialect == "modbus-rtu":
        register = profile.modbus.registers[int(place[-1])]
        if register.address + register.words > _REGISTERS:
            key = (*place, "register", "address")
            yield key, "goes beyond register 65535", "Its number takes two registers."


def _accuracy(place: Place, accuracy: Accuracy) -> Iterator[Fault]:
    if accuracy.low_c > accuracy.high_c:
        yield (*place, "low_c"), "is above high_c", "Exchange them."
    if accuracy.half_width(1.0) == 0.0:
        what = "says that the meter is without error"
        yield place, what, "State percent_of_reading, digits or floor from its data sheet."
