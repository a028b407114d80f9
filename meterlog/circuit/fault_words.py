"""Fault words: how one fault of one element is called."""

from __future__ import annotations

from collections.abc import Mapping

from meterlog.model.circuit import Element, ElementKind, FaultMode

NOTHING = "nothing electrical"
COMES_AND_GOES = " (comes and goes)"
SEVERITY_UNITS: Mapping[FaultMode, str] = {
    FaultMode.RESISTIVE: "Ω",
    FaultMode.DRAGGING: "times the current without load",
    FaultMode.FLAT: "V",
    FaultMode.STUCK_DRIVE: "V",
}
"""Unit of the severity of each mode that has one."""
_BY_MODE: Mapping[FaultMode, str] = {
    FaultMode.OPEN: "{} open",
    FaultMode.RESISTIVE: "{}: too much resistance",
    FaultMode.SHORTED: "{} shorted",
    FaultMode.SEIZED: "{} seized",
    FaultMode.DRAGGING: "{} drags",
    FaultMode.FLAT: "{} flat",
    FaultMode.NO_DRIVE: "{} asks for nothing",
    FaultMode.STUCK_DRIVE: "{} asks for the same all the time",
}
_BY_KIND: Mapping[tuple[ElementKind, FaultMode], str] = {
    (ElementKind.CONTACT, FaultMode.OPEN): "{} does not close",
    (ElementKind.CONTACT, FaultMode.SHORTED): "{} welded",
    (ElementKind.MOTOR, FaultMode.OPEN): "{}: dead spot or worn brushes",
    (ElementKind.TRANSISTOR, FaultMode.OPEN): "{} does not conduct",
    (ElementKind.REGULATOR, FaultMode.OPEN): "{} gives nothing",
    (ElementKind.CHOPPER, FaultMode.OPEN): "{} gives nothing",
}


def fault_words(element: Element, mode: FaultMode) -> str:
    """Say what is wrong with an element, such as ``main fuse open``, without a severity."""
    form = _BY_KIND.get((element.kind, mode), _BY_MODE[mode])
    return form.format(element.label or element.name)
