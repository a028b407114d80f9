"""Take the README's pictures of the window from the demo (``make pictures``).

Everything in them is simulated and invented; the pictures say so themselves. The demo's two runs
are recorded in real time on the virtual bench, so this takes about a minute.
"""

from __future__ import annotations

import os
import shutil
import sys
import tempfile
import time
from pathlib import Path

from PIL import Image

PLACE = Path(__file__).resolve().parent
SIZE = 1280, 800
COLOURS = 128
"""Enough for flat colours and smooth letters; a quarter of the bytes."""


def main() -> int:
    """Record the demo, open the window on it and take each page."""
    home = Path(tempfile.gettempdir()) / "workshop"
    home.mkdir()
    try:
        for name in ("HOME", "XDG_CONFIG_HOME", "XDG_CACHE_HOME", "XDG_DATA_HOME"):
            os.environ[name] = str(home)
        os.environ["QT_QPA_PLATFORM"] = "offscreen"
        sys.path.insert(0, str(PLACE.parents[1]))
        taken = Pictures(home).take()
    finally:
        shutil.rmtree(home)
    print("\n".join(taken))
    sys.stdout.flush()
    os._exit(0)  # a window that is still open is not taken down in good order


class Pictures:
    """The window on the demo's recordings, in a home of its own."""

    def __init__(self, home: Path) -> None:
        from PySide6.QtWidgets import QApplication

        self.application = QApplication.instance() or QApplication(["meterlog"])
        self.application.setStyle("Fusion")
        self.home = home
        self.out = home / "demo"
        self.taken: list[str] = []

    def spin(self, seconds: float) -> None:
        """Let the window work."""
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            self.application.processEvents()
            time.sleep(0.005)

    def until(self, true, seconds: float = 60.0) -> None:
        """Let the window work until something is so."""
        end = time.monotonic() + seconds
        while not true():
            if time.monotonic() > end:
                raise TimeoutError(f"waited {seconds} s for a picture.")
            self.spin(0.05)

    def keep(self, name: str) -> None:
        """Keep what is on show."""
        self.spin(0.4)
        path = PLACE / f"{name}.png"
        self.window.grab().save(str(path))
        with Image.open(path) as picture:
            small = picture.convert("RGB").quantize(COLOURS, dither=Image.Dither.NONE)
        small.save(path, optimize=True)
        self.taken.append(f"{path.name}: {path.stat().st_size} bytes")

    def press(self, *keys) -> None:
        """Press keys, wherever the focus is."""
        from PySide6.QtTest import QTest

        for key in keys:
            QTest.keyClick(self.window.focusWidget() or self.window.pages.currentWidget(), key)
            self.spin(0.05)

    def take(self) -> list[str]:
        """Give what was taken, a line each."""
        import meterlog.window.meters_page as meters_page
        from meterlog.window.main_window import MainWindow
        from meterlog.work.bench_process import scenario_card
        from meterlog.work.demo import DemoPlan, run_demo
        from meterlog.work.demo_job import demo_job_folder

        # The paths in the pictures are the demo's, not those of whoever takes them.
        meters_page.recordings_folder = lambda: self.out
        plan = DemoPlan("dead-spot", 24.0, self.out, 1)
        run_demo(plan, lambda seconds: bool(time.sleep(seconds)), lambda *_: None)
        job = demo_job_folder(self.out, scenario_card("dead-spot"))
        self.window = MainWindow()
        self.window.resize(*SIZE)
        self.window.show()
        self.spin(0.3)
        self.window.fill(recording=self.out / "before", job=job)
        self.fill_job()
        self.pages()
        return self.taken

    def fill_job(self) -> None:
        """Let the demo's recordings belong to its job."""
        from meterlog.work.job_folder import Side

        at_hand = self.window.desk.at_hand
        at_hand.take_recording(self.out / "before")
        at_hand.fit(Side.NEW)
        at_hand.take_recording(self.out / "after")

    def pages(self) -> None:
        """Take each page, in the order of the work."""
        from PySide6.QtCore import Qt

        from meterlog.window.pages import Page

        key, window, desk = Qt.Key, self.window, self.window.desk
        self.until(lambda: not desk.session.busy and desk.session.shown is not None)
        self.keep("trace")
        window.toggle_looks()
        self.press(key.Key_X)
        self.until(lambda: "mean" in desk.run_page.stretch.words.text())
        self.keep("trace-dark")
        self.press(key.Key_X)
        window.toggle_looks()
        window.toggle_looks()
        window.show_page(Page.JOB)
        self.keep("job")
        window.show_page(Page.COMPARE)
        self.spin(6.0)
        self.keep("before-after")
        window.show_page(Page.CLAIM)
        self.spin(3.0)
        self.keep("claim")
        window.show_page(Page.RECORDINGS)
        self.spin(8.0)
        self.keep("recordings")
        window.show_page(Page.CIRCUIT)
        desk.circuit.choose("low-side-linear-12v")
        self.spin(2.0)
        self.press(key.Key_4, key.Key_F3)
        self.spin(4.0)
        self.keep("circuit")


if __name__ == "__main__":
    raise SystemExit(main())
