"""Where Qt opens no window the program says why, and ends in good order."""

import os
import subprocess
import sys

import pytest

from meterlog.commands.qt_refusal import why

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
            "could not connect to display :77;"
            " From 6.5.0, xcb-cursor0 is needed to load the Qt xcb platform plugin",
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
def test_what_tells_why_is_told_and_nothing_else(said, told):
    assert why(said.splitlines()) == told


def _run(command, folder, **named):
    """Run a command of the program in a folder, with these variables besides."""
    return subprocess.run(
        [sys.executable, "-m", "meterlog", *command],
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
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
    assert line.startswith(f"meterlog: no window opens: {missing}. See that the screen is there")
    assert "make setup" in line
