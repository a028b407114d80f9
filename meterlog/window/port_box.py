"""PortBox: where a meter's port is chosen or its address typed, and which port is proposed."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from PySide6.QtWidgets import QComboBox, QSizePolicy

from meterlog.instruments import PortInfo
from meterlog.window.steady_boxes import SteadyComboBox
from meterlog.window.words import say


def likely_port(ports: Sequence[PortInfo], used: Collection[str], ticked: Collection[str]) -> str:
    """Give the ticked port a meter is most likely on: free, usable, and USB before built in."""
    free = [
        port for port in ports if port.usable and port.device in ticked and port.device not in used
    ]
    usb = [port for port in free if port.vendor]
    return next((port.device for port in (*usb, *free)), "")


def port_box() -> SteadyComboBox:
    """Make the box; nothing is chosen in it."""
    box = SteadyComboBox()
    box.setEditable(True)
    # An address is no port of the list, also once Enter was pressed behind it.
    box.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
    box.setAccessibleName(say("port, or an address such as socket://host:port"))
    box.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
    box.setMinimumContentsLength(12)
    edit = box.lineEdit()
    if edit is not None:
        edit.setPlaceholderText(say("choose a port, or type an address"))
    return box
