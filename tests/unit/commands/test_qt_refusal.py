"""Where Qt opens no window the program says why, and ends in good order."""

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from meterlog.commands.qt_libraries import ALWAYS, X11
from meterlog.commands.qt_refusal import REMEDY, remedy, why

XCB = """\
qt.qpa.xcb: could not connect to display :77
qt.qpa.plugin: From 6.5.0, xcb-cursor0 is needed to load the Qt xcb platform plugin.
qt.qpa.plugin: Could not load the Qt platform plugin "xcb" in "" even though it was found.
This application failed to start because no Qt platform plugin could be initialized. Reinstalling \
the application may fix this problem.

Available platform plugins are: offscreen, xcb, wayland.
"""


@pytest.mark.parametrize(
    ("said", "told"),
    [
        (
            XCB,
            "could not connect to display :77",
        ),
        (
            'qt.qpa.plugin: Could not load the Qt platform plugin "wayland" in "".\n',
            'Could not load the Qt platform plugin "wayland" in ""',
        ),
        (
            'Traceback (most recent call last):\n  File "window.py", line 1, in <module>\n'
            "ImportError: libEGL.so.1: cannot open shared object file\n",
            "ImportError: libEGL.so.1: cannot open shared object file",
        ),
        ("", "it says nothing"),
    ],
)
def test_what_tells_why_is_told_and_nothing_else(said, told, all_there):
    assert why(said.splitlines()) == told


@pytest.fixture
def all_there(monkeypatch):
    """No library of the system is missing, whatever this one has; gives names to take away."""
    gone = set()

    def load(name):
        if name in gone:
            raise OSError(f"{name}: cannot open shared object file: No such file or directory")

    monkeypatch.setattr("meterlog.commands.qt_libraries.ctypes.CDLL", load)
    return gone


PLUGIN = XCB.splitlines()[1:3]


@pytest.mark.skipif(sys.platform != "linux", reason="elsewhere Qt brings all with it")
def test_what_is_missing_is_named_and_not_what_qt_guesses(all_there):
    all_there |= {"libxcb-icccm.so.4", "libxkbcommon-x11.so.0", "libwayland-cursor.so.0"}
    missing = "missing here: libxcb-icccm.so.4, libxkbcommon-x11.so.0"
    assert why(PLUGIN).endswith(f'plugin "xcb" in "" even though it was found; {missing}')
    assert "cursor" not in why(PLUGIN), "it is there; what Wayland needs was not asked for"
    assert "sudo apt-get install libxcb-icccm4 libxkbcommon-x11-0;" in remedy(PLUGIN)
    all_there.clear()
    assert "missing here" not in why(PLUGIN)
    assert remedy(PLUGIN) == REMEDY


def test_what_an_import_names_is_said_once_with_its_package(all_there):
    all_there.add("libEGL.so.1")
    said = ["ImportError: libEGL.so.1: cannot open shared object file"]
    assert why(said) == said[0]
    assert "sudo apt-get install libegl1;" in remedy(said)
    said = ["libnosuch-2.0.so.7: cannot open shared object file: No such file or directory"]
    all_there.clear()
    assert remedy(said) == "Install the packages that hold libnosuch-2.0.so.7."


def test_set_up_installs_the_same_libraries():
    set_up = (Path(__file__).parents[3] / ".ci" / "setup").read_text(encoding="utf-8")
    for group, libraries in (("always", ALWAYS), ("screen", X11)):
        listed = re.search(rf'"{group}": \{{(.*?)\}}', set_up, re.DOTALL)[1]
        assert dict(re.findall(r'"(lib\S+)": "(\S+)"', listed)) == libraries


def _run(command, folder, **named):
    """Run a command of the program in a folder, with these variables besides."""
    return subprocess.run(
        [sys.executable, "-m", "meterlog", *command],
        capture_output=True,
        text=True,
        check=False,
        timeout=240,
        cwd=folder,
        env={**os.environ, **named},
    )


@pytest.mark.parametrize("command", [("window",), ("demo", "--out", "out")])
@pytest.mark.parametrize(
    ("platform", "told"),
    [
        ("nosuch", 'Could not find the Qt platform plugin "nosuch"'),
        pytest.param(
            "xcb",
            "could not connect to display :9731",
            marks=pytest.mark.skipif(sys.platform != "linux", reason="no X11"),
        ),
    ],
)
def test_a_screen_that_lets_nobody_in_is_an_error_in_words(tmp_path, command, platform, told):
    named = {"QT_QPA_PLATFORM": platform, "DISPLAY": ":9731", "HOME": str(tmp_path)}
    done = _run(command, tmp_path, **named)
    assert done.returncode == 1, done.stderr
    (line,) = done.stderr.splitlines()
    assert line.startswith(f"meterlog: no window opens: {told}")
    assert "Reinstalling" not in line
    assert "DISPLAY" in line


@pytest.mark.parametrize("command", [("window",), ("demo", "--out", "out")])
def test_a_library_that_is_missing_is_an_error_in_words(tmp_path, command):
    (tmp_path / "first" / "PySide6").mkdir(parents=True)
    missing = "libEGL.so.1: cannot open shared object file: No such file or directory"
    (tmp_path / "first" / "PySide6" / "__init__.py").write_text(f"raise ImportError({missing!r})")
    paths = os.pathsep.join([str(tmp_path / "first"), *filter(None, sys.path)])
    named = {"QT_QPA_PLATFORM": "xcb", "DISPLAY": ":9731", "PYTHONPATH": paths}
    done = _run(command, tmp_path, **named)
    assert done.returncode == 1, done.stderr
    (line,) = done.stderr.splitlines()
    assert line.startswith(f"meterlog: no window opens: {missing}. On Debian or Ubuntu: ")
    assert "sudo apt-get install libegl1" in line
