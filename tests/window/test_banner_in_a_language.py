"""The red banner and the status line are whole in another language, and name no number."""

import sys
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication, QTranslator

from meterlog.acquire.reader_state import ReaderState
from meterlog.window.phase import Phase
from meterlog.window.sentences import know_texts
from meterlog.window.status_strip import alarm_words, meter_words
from meterlog.window.words import look_up_texts
from meterlog.work import RunStatus

sys.path.insert(0, str(Path(__file__).parents[1] / "languages"))

from collect import engine_templates, window_texts

WORDS = {
    "NO READINGS FROM {names}: {reason}": "NICHTS VON {names}: {reason}",
    "Plug it in again: the recording goes on, and so will its readings.": "Wieder einstecken.",
    "NOT CONNECTED": "NICHT VERBUNDEN",
    "lost: {0}": "getrennt: {0}",
    "there is no such port.": "den Anschluss gibt es nicht.",
    "the port went away ({0}).": "der Anschluss ist weg ({0}).",
    "the device has hung up": "das Gerät hat aufgelegt",
}
LOST = "lost: /dev/ttyUSB0: there is no such port. See `meterlog ports` for those that are there."


class _Language(QTranslator):
    def translate(self, context, source, disambiguation=None, n=-1):
        return WORDS.get(source, "")


@pytest.fixture
def other_language(qapp):
    """A language that has words for these texts alone."""
    translator = _Language()
    QCoreApplication.installTranslator(translator)
    look_up_texts(loaded=True)
    know_texts([one for one in WORDS if "{0}" in one or one.islower()])
    yield
    look_up_texts(loaded=False)
    know_texts(())
    QCoreApplication.removeTranslator(translator)


def test_a_port_that_went_away(other_language):
    status = RunStatus(meters=(ReaderState("hand", message=LOST),))
    gone = "hand: getrennt: /dev/ttyUSB0: den Anschluss gibt es nicht. Wieder einstecken."
    assert alarm_words(Phase.RECORDING, status) == f"NICHTS VON {gone}"
    short = "getrennt: /dev/ttyUSB0: den Anschluss gibt es nicht"
    assert meter_words(status) == f"hand: NICHT VERBUNDEN ({short})"


def test_a_device_that_hung_up(other_language):
    words = "lost: the port went away (the device has hung up)."
    said = alarm_words(Phase.RECORDING, RunStatus(meters=(ReaderState("hand", message=words),)))
    assert said == "NICHTS VON hand: getrennt: der Anschluss ist weg (das Gerät hat aufgelegt)."


def test_their_texts_are_among_those_that_are_translated():
    found = {one.words for one in window_texts()} | set(engine_templates())
    assert set(WORDS) <= found
