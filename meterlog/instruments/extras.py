"""Libraries that are installed only where they are wanted, and the line that installs them."""

from __future__ import annotations

import sys

HID = ("hidapi",)
VISA = ("pyvisa", "pyvisa-py", "pyusb")


def install_line(packages: tuple[str, ...]) -> str:
    """Give the line to type that puts ``packages`` where this program is installed.

    Not the name of this program's own extra: that is understood only where its source is.
    """
    python = sys.executable or "python"
    quoted = f'"{python}"' if " " in python else python
    return f"{quoted} -m pip install {' '.join(packages)}"
