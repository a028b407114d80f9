"""A window that remembers its meter, and a virtual fan in another process that obeys it."""

import subprocess
import sys

import pytest

from meterlog.evidence import signing
from meterlog.window.last_setup import ChannelSetup, LastSetup, MeterSetup, Setup
from meterlog.window.main_window import MainWindow

ARGUMENTS = ("virtual", "line-logger", "--scenario", "dead-spot", "--no-script", "--tcp")
ROLES = {"feed": "motor-feed", "return": "motor-return", "current": "motor-current"}


class Bench:
    """The virtual fan."""

    def __init__(self):
        self.process = subprocess.Popen(
            [sys.executable, "-m", "meterlog", *ARGUMENTS],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
        )
        self.url = self.process.stdout.readline().strip()

    def obey(self, event):
        """Do to the fan what was marked."""
        if event.kind.value == "speed":
            self.order(f"speed {event.value}")
        elif event.kind.value == "tap":
            self.order("tap")

    def draws(self, shown, *, sound):
        """Tell whether the current on show is that of a running fan.

        One that is sound by now runs on: its brush, which lifts every few seconds, is put back
        unseen. However long a machine takes to get here, it is not found dead.
        """
        running = shown.text not in {"—", ""} and float(shown.text) > 5.0
        if sound and not running:
            self.order("tap")
        return running

    def order(self, line):
        self.process.stdin.write(line + "\n")
        self.process.stdin.flush()

    def close(self):
        self.process.stdin.close()
        self.process.terminate()
        self.process.wait(10)
        self.process.stdout.close()


@pytest.fixture
def bench():
    made = Bench()
    yield made
    made.close()


@pytest.fixture(autouse=True)
def keys_of_its_own(monkeypatch, tmp_path):
    """No test signs with the key of the person at this computer."""
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    assert tmp_path in signing.key_folder().parents


@pytest.fixture
def window(qtbot, monkeypatch, tmp_path, bench):
    """A whole window as it opens the second time: it knows the meter and its port."""
    monkeypatch.setattr("meterlog.window.meters_page.recordings_folder", lambda: tmp_path / "shelf")
    channels = tuple(ChannelSetup(name, role) for name, role in ROLES.items())
    LastSetup().keep(Setup((MeterSetup("line-logger", bench.url, "", channels),), "linear-12v"))
    window = MainWindow(on_mark=bench.obey)
    qtbot.addWidget(window)
    window.resize(1280, 800)
    window.show()
    qtbot.waitExposed(window)
    window.fill()
    return window
