"""Tells whether there is a screen to open a window on, and lets its language be chosen."""

from __future__ import annotations

import argparse
import os
import sys


def has_screen() -> bool:
    """Tell whether a window could be opened here."""
    platform = os.environ.get("QT_QPA_PLATFORM", "").partition(":")[0]
    if platform in {"offscreen", "minimal"}:
        return False
    if platform in {"vnc", "linuxfb", "eglfs"}:
        return True  # Qt draws on something that is no desktop
    if sys.platform in {"win32", "darwin"}:
        return True
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))


def paint_without_screen() -> None:
    """Let Qt paint pictures in memory: a command that opens no window must not need a screen."""
    os.environ["QT_QPA_PLATFORM"] = "offscreen"


def add_language(parser: argparse.ArgumentParser) -> None:
    """Let the language of the window be chosen."""
    parser.add_argument(
        "--language",
        metavar="LANGUAGE",
        help="language of the window, such as de or en (default: the system's, else English); "
        "evidence is in English",
    )
