"""Limits profiles: TOML text to :class:`~meterlog.model.limits.Limits`."""

from __future__ import annotations

from types import MappingProxyType

from meterlog.model import Controller, DecisionRule, Fuse, Limits, SpeedLimits
from meterlog.model.errors import ProfileError
from meterlog.model.opening_times import FUSE_KINDS, opening_table
from meterlog.model.speed_step import FASTEST_STEP, is_speed_step
from meterlog.profile.table import TomlTable, parse_toml


def _speed(table: TomlTable) -> SpeedLimits:
    speed = SpeedLimits(
        min_a=table.optional_number("min_a", -1e6, 1e6),
        max_a=table.optional_number("max_a", -1e6, 1e6),
    )
    table.finish()
    if speed.min_a is not None and speed.max_a is not None and speed.min_a > speed.max_a:
        raise table.error(
            "min_a",
            f"{speed.min_a:g} is above max_a {speed.max_a:g}",
            "Give the lower of the two as min_a.",
        )
    return speed


def _speeds(table: TomlTable) -> dict[int, SpeedLimits]:
    speeds: dict[int, SpeedLimits] = {}
    for key in table.names():
        if not is_speed_step(key):
            remedy = f"Expected tables such as [speed.1], up to {FASTEST_STEP}."
            raise table.error(key, "is no speed step", remedy)
        if int(key) in speeds:
            raise table.error(
                key, f"means speed {int(key)} a second time", "Leave one of the two tables."
            )
        speeds[int(key)] = _speed(table.table(key))
    return speeds


CONTROLLERS = ("", "linear", "resistors", "pulsed")


def _fuse(table: TomlTable) -> Fuse | None:
    if not table.names():
        return None
    rating_a = table.optional_number("rating_a", 0.1, 1000.0)
    if rating_a is None:
        raise table.error("rating_a", "is missing", "Say what is stamped on the fuse, in amperes.")
    usual = Fuse(rating_a)
    fuse = Fuse(
        rating_a=rating_a,
        kind=table.choice("kind", usual.kind, FUSE_KINDS),
        max_load_percent=table.number("max_load_percent", usual.max_load_percent, 1.0, 100.0),
    )
    table.finish()
    try:
        opening_table(fuse.kind, fuse.rating_a)
    except ProfileError as error:
        raise table.error("rating_a", f"has no table: {error.message}", error.remedy) from error
    return fuse


def _controller(table: TomlTable) -> Controller:
    controller = Controller(
        kind=table.choice("kind", "", CONTROLLERS),
        max_heat_w=table.optional_number("max_heat_w", 0.0, 10_000.0),
    )
    table.finish()
    return controller


def limits_profile(name: str, text: str, subject: str) -> Limits:
    """Make Limits of TOML text.

    Parameters
    ----------
    name : str
    text : str
    subject : str
        The file, for messages.

    Returns
    -------
    Limits
        Keys that the file does not set keep the defaults of :class:`Limits`, the voltages scaled
        to ``nominal_v``.

    Raises
    ------
    ProfileError
        If a key is unknown, of the wrong type or out of range; names file and key.
    """
    top = parse_toml(text, subject)
    base = Limits()
    nominal_v = top.number("nominal_v", base.nominal_v, 1.0, 60.0)
    ratio = nominal_v / base.nominal_v
    limits = Limits(
        name=name,
        nominal_v=nominal_v,
        supply_present_v=top.number("supply_present_v", base.supply_present_v * ratio, 0.0, 60.0),
        driven_v=top.number("driven_v", base.driven_v * ratio, 0.0, 60.0),
        open_current_a=top.number("open_current_a", base.open_current_a, 0.0, 1000.0),
        locked_current_a=top.number("locked_current_a", base.locked_current_a, 0.0, 10_000.0),
        inrush_window_s=top.number("inrush_window_s", base.inrush_window_s, 0.0, 3600.0),
        min_dwell_s=top.number("min_dwell_s", base.min_dwell_s, 0.0, 3600.0),
        command_lag_s=top.number("command_lag_s", base.command_lag_s, 0.0, 60.0),
        coast_s=top.number("coast_s", base.coast_s, 0.0, 600.0),
        hysteresis=top.number("hysteresis", base.hysteresis, 0.0, 0.5),
        decision=DecisionRule(top.choice("decision", base.decision, tuple(DecisionRule))),
        guard_factor=top.number("guard_factor", base.guard_factor, 0.0, 3.0),
        reference_v=top.optional_number("reference_v", 0.1, 60.0),
        at_reference=top.flag("at_reference", base.at_reference),
        brush_v=top.number("brush_v", base.brush_v, 0.0, 5.0),
        fuse=_fuse(top.table("fuse")),
        controller=_controller(top.table("controller")),
        max_feed_drop_v=top.optional_number("max_feed_drop_v", 0.0, 60.0),
        max_ground_drop_v=top.optional_number("max_ground_drop_v", 0.0, 60.0),
        speeds=MappingProxyType(_speeds(top.table("speed"))),
        basis=top.text("basis", ""),
        text=text,
    )
    for free in ("title", "description", "note"):
        top.text(free, "")
    top.finish()
    if limits.open_current_a >= limits.locked_current_a:
        raise top.error("open_current_a", "is not below locked_current_a", "Correct one of them.")
    return limits
