"""The sound: what is played, in samples; no test needs a device."""

import json
import math

import numpy as np
import pytest
from PySide6.QtCore import QObject

from meterlog.evidence.trace_store import TraceStore
from meterlog.model import Block, Review, Span, SpanKind
from meterlog.window.session import Phase, Session
from meterlog.window.shown import Shown
from meterlog.window.sound import RATE, Cue, SoundDesk, Tone
from meterlog.window.sound.cues import PATTERNS, cue_samples
from meterlog.window.sound.loudspeaker import AHEAD_S, NoSound, open_loudspeaker, pcm
from meterlog.window.sound.sound_desk import Followed, cue_for


def strongest_hz(samples):
    """The strongest frequency by numpy's Fourier transform."""
    power = np.abs(np.fft.rfft(samples * np.hanning(len(samples))))
    return np.argmax(power) * RATE / len(samples)


def loudness(samples):
    return float(np.sqrt(np.mean(np.square(samples))))


@pytest.mark.parametrize(("value", "hertz"), [(20.0, 1200.0), (10.0, 600.0), (5.0, 424.3)])
def test_the_pitch_follows_the_reading_by_equal_intervals(value, hertz):
    tone = Tone(full=20.0, least=0.3)
    tone.follow(value)
    tone.samples(RATE // 10)
    assert strongest_hz(tone.samples(RATE)) == pytest.approx(hertz, rel=0.005)


@pytest.mark.parametrize("value", [0.0, 0.2, -0.1, math.nan, math.inf])
def test_nothing_flows_nothing_sounds(value):
    tone = Tone()
    tone.follow(value)
    assert loudness(tone.samples(RATE)) == 0.0


def test_a_dropout_is_silent_within_ten_milliseconds_of_samples_and_never_clicks():
    tone = Tone()
    tone.set_volume(1.0)
    tone.follow(12.0)
    before = tone.samples(RATE // 5)
    tone.follow(0.0)
    after = tone.samples(RATE // 5)
    assert loudness(before[RATE // 10 :]) > 0.3
    assert loudness(after[RATE // 100 :]) == 0.0
    jumps = np.abs(np.diff(np.concatenate([before, after])))
    assert jumps.max() < 1.1 * np.abs(np.diff(before[RATE // 10 :])).max()


def test_samples_are_the_same_however_they_are_asked_for():
    def made(counts):
        tone = Tone()
        tone.follow(7.0)
        return np.concatenate([tone.samples(count) for count in counts])

    whole = made([4800])
    np.testing.assert_allclose(made([1, 7, 392, 2000, 2400]), whole, atol=1e-9)
    np.testing.assert_allclose(made([480] * 10), whole, atol=1e-9)


def test_cues_differ_in_pulses_and_lie_where_an_alarm_is_heard():
    """Energy between 500 and 2,500 Hz as ISO 7731 asks of alarm sounds."""
    shapes = set()
    for cue, pulses in PATTERNS.items():
        sound = cue_samples(cue, RATE)
        assert np.abs(sound).max() <= 1.0
        assert len(sound) < RATE
        power = np.abs(np.fft.rfft(sound)) ** 2
        hertz = np.fft.rfftfreq(len(sound), 1 / RATE)
        inside = (hertz >= 450) & (hertz <= 2500)
        assert power[inside].sum() > 0.9 * power.sum()
        rises = np.sign(np.diff([pulse[0] for pulse in pulses])).tolist()
        shapes.add((len(pulses), tuple(rises)))
        assert cue.value
    assert len(shapes) == len(PATTERNS)


def test_a_cue_is_played_once_over_the_tone():
    tone = Tone()
    tone.set_volume(1.0)
    tone.play(Cue.OVER)
    length = len(cue_samples(Cue.OVER, RATE))
    assert loudness(tone.samples(length)) > 0.2
    assert loudness(tone.samples(RATE)) == 0.0


def test_pcm_is_sixteen_bits_little_endian_and_never_wraps():
    assert pcm(np.array([0.0, 1.0, -1.0, 7.0])) == b"\x00\x00\xff\x7f\x01\x80\xff\x7f"


@pytest.mark.parametrize(
    ("before", "now", "cue"),
    [
        (SpanKind.RUNNING, SpanKind.DEAD, Cue.DEAD),
        (SpanKind.RUNNING, SpanKind.FEED_LOST, Cue.DEAD),
        (SpanKind.DEAD, SpanKind.GROUND_LOST, None),
        (SpanKind.RUNNING, SpanKind.OVER, Cue.OVER),
        (SpanKind.OVER, SpanKind.LOCKED, None),
        (SpanKind.DEAD, SpanKind.RUNNING, Cue.RETURNED),
        (SpanKind.OVER, SpanKind.RUNNING, Cue.RETURNED),
        (SpanKind.OFF, SpanKind.RUNNING, None),
        (SpanKind.DEAD, SpanKind.OFF, None),
        (None, SpanKind.DEAD, Cue.DEAD),
    ],
)
def test_each_change_has_its_cue_or_none(before, now, cue):
    assert cue_for(before, now) is cue


class Pretended:
    """A loudspeaker that keeps its source of samples."""

    def __init__(self):
        self.samples, self.open = None, 0

    def __call__(self, samples, parent):
        assert isinstance(parent, QObject)
        self.samples, self.open = samples, self.open + 1
        return self

    def close(self):
        self.open -= 1


@pytest.fixture
def loud(qapp, about, tmp_path):
    """A sound desk beside a session that is recording; and its pretended loudspeaker."""
    session, speaker = Session(), Pretended()
    session.shown = Shown(about, TraceStore(about.instruments), live=True)
    session.phase = Phase.RECORDING
    desk = SoundDesk(session, qapp, speaker, tmp_path)
    desk.turn()
    desk.tick()
    return desk, session, speaker


def read(session, feed, back, amps, at=0):
    values = np.array([[feed, back, amps]])
    block = Block("line-logger", np.array([at]), values, np.zeros((1, 3), np.uint8))
    session.shown.traces.take(block)
    for listener in session.listeners:
        listener(block)


def test_a_reading_that_comes_in_is_the_tone_at_once_and_a_dropout_its_end(loud):
    _, session, speaker = loud
    read(session, 12.0, 0.1, 4.0)
    speaker.samples(RATE // 20)
    assert loudness(speaker.samples(RATE // 50)) > 0.05
    read(session, 12.0, 0.1, 0.0, 1)
    # Until it is heard: what was made ahead, and the fade.
    speaker.samples(round(0.01 * RATE))
    assert loudness(speaker.samples(RATE // 10)) == 0.0
    assert AHEAD_S + 0.01 < 0.1


def test_voltage_is_followed_instead_on_demand(loud):
    desk, session, speaker = loud
    desk.turn_followed()
    desk.tick()
    assert desk.follows is Followed.VOLTAGE
    read(session, 12.0, 0.0, 0.0)
    speaker.samples(RATE // 20)
    assert loudness(speaker.samples(RATE // 50)) > 0.05


def test_readings_that_cease_end_the_tone_and_are_told_once(loud, monkeypatch):
    desk, session, speaker = loud
    read(session, 12.0, 0.1, 4.0)
    played = []
    monkeypatch.setattr(desk.tone, "play", played.append)
    desk.tick()
    assert played == []
    desk._heard_s -= 5.0
    desk.tick()
    desk.tick()
    assert played == [Cue.LOST]
    speaker.samples(RATE // 20)
    assert loudness(speaker.samples(RATE // 50)) == 0.0


def test_spans_are_told_as_they_change(loud, monkeypatch):
    desk, session, _ = loud
    played = []
    monkeypatch.setattr(desk.tone, "play", played.append)
    for kind in (SpanKind.RUNNING, SpanKind.DEAD, SpanKind.DEAD, SpanKind.RUNNING, SpanKind.OVER):
        session.shown.review = Review(spans=(Span(kind, 0, 1_000_000_000),))
        read(session, 12.0, 0.1, 4.0)
        desk.tick()
    assert played == [Cue.DEAD, Cue.RETURNED, Cue.OVER]


def test_it_is_off_until_switched_on_and_then_on_again_the_next_time(loud, qapp, tmp_path):
    desk, session, speaker = loud
    desk.louder(2)
    desk.turn_followed()
    assert desk.words == "sound: voltage, 80 %"
    again = SoundDesk(session, qapp, speaker, tmp_path)
    assert again.on
    assert again.words == desk.words
    again.turn()
    assert not SoundDesk(session, qapp, speaker, tmp_path).on
    fresh = SoundDesk(session, qapp, speaker, tmp_path / "other")
    assert (fresh.on, fresh.words) == (False, "sound off")


def test_volume_stays_between_soft_and_full(loud):
    desk, _, _ = loud
    desk.louder(99)
    assert desk.volume == 1.0
    desk.louder(-99)
    assert desk.volume == 0.1


@pytest.mark.parametrize("content", ["", "{", "[]", '{"volume": "x"}', json.dumps({"volume": 1})])
def test_a_damaged_file_of_choices_costs_nothing(qapp, tmp_path, content):
    (tmp_path / "sound.json").write_text(content)
    assert not SoundDesk(Session(), qapp, Pretended(), tmp_path).on


def test_without_sound_the_reason_is_told_and_all_else_goes_on(qapp, tmp_path, loud):
    def none(samples, parent):
        raise NoSound("no sound: for a test")

    session = Session()
    desk = SoundDesk(session, qapp, none, tmp_path / "none")
    desk.turn()
    desk.tick()
    assert desk.words == "no sound"
    assert session.trouble == "no sound: for a test"


def test_this_computer_has_sound_or_a_reason_why_not(qapp):
    """Whatever is installed here: a loudspeaker or words, never a crash."""
    said = ""
    try:
        open_loudspeaker(Tone().samples, qapp).close()
    except NoSound as error:
        said = str(error)
    assert not said or said.startswith("no sound: ")


def test_keys_switch_the_sound_and_change_its_loudness(window, qtbot, monkeypatch):
    from PySide6.QtCore import Qt

    sound, speaker = window.desk.sound, Pretended()
    monkeypatch.setattr(sound, "_open", speaker)
    window.show_page(1)
    for key in (Qt.Key.Key_V, Qt.Key.Key_PageUp, Qt.Key.Key_Y):
        qtbot.keyClick(window.pages.currentWidget(), key)
    assert window.desk.status.sound.text() == "sound: voltage, 70 %"
    qtbot.keyClick(window.pages.currentWidget(), Qt.Key.Key_V)
    assert (speaker.open, window.desk.status.sound.text()) == (0, "sound off")
