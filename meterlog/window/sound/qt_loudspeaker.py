"""QtLoudspeaker: samples into the sink of Qt's multimedia part. Imported only where it is there."""

from __future__ import annotations

from PySide6.QtCore import QObject, QTimer
from PySide6.QtMultimedia import QAudioFormat, QAudioSink, QMediaDevices, QtAudio

from meterlog.window.sound.loudspeaker import AHEAD_S, NoSound, Samples, pcm
from meterlog.window.sound.tone import RATE
from meterlog.window.words import say

_PUSH_MS = 10


class QtLoudspeaker:
    """Plays on the default device.

    Parameters
    ----------
    samples : callable
        Gives so many next samples; called in the thread of ``parent``.
    parent : QObject

    Raises
    ------
    NoSound
        If there is no device, or it can't be opened.
    """

    def __init__(self, samples: Samples, parent: QObject) -> None:
        device = QMediaDevices.defaultAudioOutput()
        if device.isNull():
            raise NoSound(
                say("no sound: the computer has no device for it; plug one in and press V")
            )
        form = QAudioFormat()
        form.setSampleRate(RATE)
        form.setChannelCount(1)
        form.setSampleFormat(QAudioFormat.SampleFormat.Int16)
        if not device.isFormatSupported(form):
            raise NoSound(say("no sound: the device takes no 48 kHz mono; choose another, press V"))
        self._samples = samples
        self._sink = QAudioSink(device, form, parent)
        self._sink.setBufferSize(round(AHEAD_S * RATE) * 2)
        self._way = self._sink.start()
        if self._sink.error() != QtAudio.Error.NoError:
            self._sink.stop()
            raise NoSound(say("no sound: the device can't be opened; is another program using it?"))
        self._timer = QTimer(parent)
        self._timer.setInterval(_PUSH_MS)
        self._timer.timeout.connect(self._push)
        self._timer.start()

    def _push(self) -> None:
        room = self._sink.bytesFree() // 2
        if room > 0:
            self._way.write(pcm(self._samples(room)))

    def close(self) -> None:
        """Fall silent for good."""
        self._timer.stop()
        self._sink.stop()
