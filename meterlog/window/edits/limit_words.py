"""What a limit is called in the window, and in which unit it is; its key stands in the tip."""

from __future__ import annotations

from meterlog.window.numbers import figure_words
from meterlog.window.words import later, say

_WORDS = {
    "nominal_v": (later("nominal voltage"), "V"),
    "supply_present_v": (later("supply is there from"), "V"),
    "driven_v": (later("motor is driven from"), "V"),
    "open_current_a": (later("next to no current below"), "A"),
    "locked_current_a": (later("rotor is held from"), "A"),
    "inrush_window_s": (later("start-up not judged for"), "s"),
    "min_dwell_s": (later("shortest condition told"), "s"),
    "command_lag_s": (later("answer to a command within"), "s"),
    "coast_s": (later("no current while slowing down, up to"), "s"),
    "hysteresis": (later("threshold left when passed back by the part"), ""),
    "decision": (later("rule of decision"), ""),
    "guard_factor": (later("guard band, part of U"), ""),
    "reference_v": (later("reference voltage"), "V"),
    "at_reference": (later("current limits hold at the reference voltage"), ""),
    "brush_v": (later("voltage over the brushes"), "V"),
    "max_feed_drop_v": (later("highest voltage drop of the feed"), "V"),
    "max_ground_drop_v": (later("highest voltage drop of the ground"), "V"),
    "fuse.rating_a": (later("rating of the fuse"), "A"),
    "fuse.kind": (later("kind of fuse"), ""),
    "fuse.max_load_percent": (later("highest load of the fuse"), "%"),
    "controller.kind": (later("kind of controller"), ""),
    "controller.max_heat_w": (later("highest heat in the controller"), "W"),
}
_OF_SPEED = {
    "min_a": later("lowest current at speed {speed}"),
    "max_a": later("highest current at speed {speed}"),
}
"""By keys of :func:`meterlog.work.amended_limits.limit_values`."""


def limit_name(key: str) -> str:
    """Give what a limit is called; its key where there is no name for it."""
    head, _, rest = key.partition(".")
    speed, _, side = rest.partition(".")
    if head == "speed" and side in _OF_SPEED:
        return say(_OF_SPEED[side], speed=speed)
    return say(_WORDS[key][0]) if key in _WORDS else key


def limit_value(key: str, value: str) -> str:
    """Give a limit's value with its unit; in words where there is none."""
    if not value:
        return say("none")
    unit = "A" if key.startswith("speed.") else _WORDS.get(key, ("", ""))[1]
    return f"{figure_words(value)} {unit}".rstrip()


def limit_words(key: str, value: str) -> str:
    """Give name and value: ``nominal voltage: 12 V``."""
    return f"{limit_name(key)}: {limit_value(key, value)}"
