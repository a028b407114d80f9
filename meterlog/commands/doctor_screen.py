"""Whether Qt has a screen and a sound device here: asked in a process of its own.

Where Qt finds no screen, or a library of the system is missing, it does not raise an error but ends
the process; so this module is also run by itself, and prints one JSON object.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Iterator, Mapping, Sequence

from meterlog.commands.qt_refusal import REMEDY, remedy, why
from meterlog.commands.screen import has_screen
from meterlog.work.doctor import Line, State

_ASK_S = 8.0
"""Chosen: many times what Qt takes to start on a slow computer that has nothing else to do."""
_BUSY = (
    "Look again when the computer is idle. If it says so again: see that the screen is there and"
    " lets this user in (DISPLAY, WAYLAND_DISPLAY)."
)
_NO_SCREEN = "The command line does everything but show; the window needs a screen."
_SOUND = "To hear the current: pip install 'meterlog[sound]', on Linux also libpulse0."
_SMALL = (1024, 600)


def look_at_screen() -> Iterator[Line]:
    """Ask another process for Qt's screens and sound devices."""
    environment = dict(os.environ)
    shown = has_screen()
    if not shown:
        environment["QT_QPA_PLATFORM"] = "offscreen"
    command = [sys.executable, "-m", "meterlog.commands.doctor_screen"]
    try:
        done = subprocess.run(
            command, capture_output=True, check=False, timeout=_ASK_S, env=environment
        )
    except subprocess.TimeoutExpired:
        # A computer that has much to do is slow as well: that nobody answered in time proves
        # neither that Qt works nor that it does not.
        yield Line("screen", State.LOOK, f"did not answer within {_ASK_S:g} s", _BUSY)
        return
    except OSError as error:
        yield Line("screen", State.BAD, f"Qt does not start: {error.strerror}", REMEDY)
        return
    try:
        told = json.loads(done.stdout.decode("utf-8", "replace").splitlines()[-1])
        qt = dict(told)
    except (ValueError, IndexError, TypeError):
        said = done.stderr.decode("utf-8", "replace").splitlines()
        yield Line("screen", State.BAD, f"Qt does not start: {why(said)}", remedy(said))
        return
    yield from screen_lines(qt, shown=shown)
    yield sound_line(qt)


def screen_lines(told: Mapping[str, object], *, shown: bool) -> Iterator[Line]:
    """Put into words what the other process told of screens.

    Parameters
    ----------
    told : mapping
        ``qt``, ``platform``, ``screens`` (list of width, height, scale), ``sound`` (number of
        devices, or None), ``why``.
    shown : bool
        A window could be seen.
    """
    screens = told.get("screens")
    qt = f"Qt {told.get('qt')}, platform {told.get('platform')}"
    if not shown:
        yield Line("screen", State.LOOK, f"none ({qt} works)", _NO_SCREEN)
        return
    for width, height, scale in screens if isinstance(screens, list) else []:
        words = f"{width}x{height} at scale {scale:g}, {qt}"
        if width < _SMALL[0] or height < _SMALL[1]:
            do = f"The window is made for {_SMALL[0]}x{_SMALL[1]} or more: make the scale smaller."
            yield Line("screen", State.LOOK, words, do)
        else:
            yield Line("screen", State.OK, words)
    if not screens:
        yield Line("screen", State.LOOK, f"none ({qt})", _NO_SCREEN)


def sound_line(told: Mapping[str, object]) -> Line:
    """Put into words what the other process told of sound: nice to have, never needed."""
    devices = told.get("sound")
    if not isinstance(devices, int):
        return Line("sound", State.OK, f"none: {told.get('why')}; nothing else needs it. {_SOUND}")
    if not devices:
        return Line("sound", State.OK, "none: no device is plugged in; nothing else needs it")
    return Line("sound", State.OK, f"{devices} device{'s' if devices > 1 else ''}")


def _tell(arguments: Sequence[str]) -> None:
    from PySide6 import __version__
    from PySide6.QtGui import QGuiApplication

    application = QGuiApplication(list(arguments))
    told: dict[str, object] = {
        "qt": __version__,
        "platform": application.platformName(),
        "screens": [
            (one.size().width(), one.size().height(), one.devicePixelRatio())
            for one in application.screens()
        ],
        "sound": None,
        "why": "",
    }
    try:
        from PySide6.QtMultimedia import QMediaDevices

        told["sound"] = len(QMediaDevices.audioOutputs())
    except ImportError as error:
        told["why"] = f"QtMultimedia can't be loaded ({error})"
    sys.stdout.write(json.dumps(told) + "\n")
    sys.stdout.flush()
    # Some platforms hang or crash while they let go of the screen; all has been said.
    os._exit(0)


if __name__ == "__main__":
    _tell(sys.argv[:1])
