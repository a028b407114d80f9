"""A meter that falls silent is cried out once on the terminal."""

import io
import sys

import pytest

from meterlog.acquire import ReaderState
from meterlog.commands.silence_told import SilenceTold
from meterlog.commands.terminal import Progress
from meterlog.work import RunStatus


class Screen(io.StringIO):
    def __init__(self, terminal: bool) -> None:
        super().__init__()
        self._terminal = terminal

    def isatty(self) -> bool:
        return self._terminal


@pytest.mark.parametrize("terminal", [True, False])
def test_silence_is_said_once_with_its_reason_and_so_is_its_end(monkeypatch, terminal):
    screen = Screen(terminal)
    monkeypatch.setattr(sys, "stderr", screen)
    told, progress = SilenceTold(), Progress("recording")
    well, other = ReaderState("hand-meter", alive=True), ReaderState("clamp", alive=True)
    silent = ReaderState("hand-meter", message="silent since 12.3 s: no reading for 1.2 s")
    for meter in (well, silent, silent, well, silent):
        told.tell(RunStatus(meters=(meter, other)), progress)
    lines = [line.split("\x1b[K")[-1] for line in screen.getvalue().splitlines()]
    bell = "\a" if terminal else ""
    cry = f"{bell}NO READINGS FROM hand-meter: silent since 12.3 s: no reading for 1.2 s"
    assert lines == [cry, "readings from hand-meter again", cry]
