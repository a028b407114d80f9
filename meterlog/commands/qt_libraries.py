"""QtLibraries: libraries of the system that Qt loads; which are missing, and who holds them.

Qt names at most one: a platform plugin that can't be loaded is told without a reason, and of X11
always libxcb-cursor, there or not.
"""

from __future__ import annotations

import ctypes
import re
import sys
from collections.abc import Iterable, Mapping, Sequence
from types import MappingProxyType

ALWAYS: Mapping[str, str] = MappingProxyType(
    {
        "libGL.so.1": "libgl1",
        "libEGL.so.1": "libegl1",
        "libxkbcommon.so.0": "libxkbcommon0",
        "libfontconfig.so.1": "libfontconfig1",
        "libfreetype.so.6": "libfreetype6",
        "libdbus-1.so.3": "libdbus-1-3",
        "libglib-2.0.so.0": "libglib2.0-0",
        "libgthread-2.0.so.0": "libglib2.0-0",
    }
)
"""By the name under which they are loaded: the Debian package. Needed whatever Qt paints on."""
X11: Mapping[str, str] = MappingProxyType(
    {
        "libX11-xcb.so.1": "libx11-xcb1",
        "libxcb-cursor.so.0": "libxcb-cursor0",
        "libxcb-icccm.so.4": "libxcb-icccm4",
        "libxcb-image.so.0": "libxcb-image0",
        "libxcb-keysyms.so.1": "libxcb-keysyms1",
        "libxcb-randr.so.0": "libxcb-randr0",
        "libxcb-render-util.so.0": "libxcb-render-util0",
        "libxcb-shape.so.0": "libxcb-shape0",
        "libxcb-sync.so.1": "libxcb-sync1",
        "libxcb-util.so.1": "libxcb-util1",
        "libxcb-xfixes.so.0": "libxcb-xfixes0",
        "libxcb-xkb.so.1": "libxcb-xkb1",
        "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
    }
)
WAYLAND: Mapping[str, str] = MappingProxyType(
    {
        "libwayland-client.so.0": "libwayland-client0",
        "libwayland-cursor.so.0": "libwayland-cursor0",
    }
)
_PLUGIN = re.compile(r'Qt platform plugin "([a-z]+)')
_BY_PLUGIN = {"xcb": X11, "wayland": WAYLAND}
_NAMED = re.compile(r"\b(lib[\w.+-]+\.so[.\d]*): cannot open shared object file")


def missing_libraries(said: Sequence[str]) -> Mapping[str, str]:
    """Give the libraries that Qt could not load here.

    Parameters
    ----------
    said : sequence of str
        What Qt or Python said when no window opened.

    Returns
    -------
    mapping of str to str
        The name of each, and the Debian package that holds it; empty where that is not known.
    """
    words = "\n".join(said)
    wanted = dict(ALWAYS)
    for plugin in _PLUGIN.findall(words):
        wanted |= _BY_PLUGIN.get(plugin, {})
    named = {name: _ANY.get(name, "") for name in _NAMED.findall(words)}
    return named | {name: wanted[name] for name in wanted if not _loads(name)}


def packages_words(libraries: Mapping[str, str]) -> str:
    """Say how they are installed.

    Parameters
    ----------
    libraries : mapping of str to str
        As :func:`missing_libraries` gives them, one at least.
    """
    packages = _each(package for package in libraries.values() if package)
    else_words = "the packages that hold " + ", ".join(libraries)
    if not packages:
        return f"Install {else_words}."
    line = f"sudo apt-get install {' '.join(packages)}"
    return f"On Debian or Ubuntu: {line}; elsewhere {else_words}."


_ANY = {**ALWAYS, **X11, **WAYLAND}


def _each(words: Iterable[str]) -> list[str]:
    return list(dict.fromkeys(words))


def _loads(name: str) -> bool:
    """Tell whether the system's loader finds a library; elsewhere than on Linux, that it does."""
    if sys.platform != "linux":
        return True
    try:
        ctypes.CDLL(name)
    except OSError:
        return False
    return True
