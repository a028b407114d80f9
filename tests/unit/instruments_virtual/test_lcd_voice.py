import pytest

from meterlog.instruments import LcdFrameDecoder
from meterlog.instruments.virtual.lcd_voice import LcdVoice
from meterlog.instruments.virtual.meter import MeterModel
from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.scenarios import find_scenario
from meterlog.instruments.virtual.script import speed
from meterlog.model import EventKind, Flag
from meterlog.model.errors import UsageError
from meterlog.profile import load_meter

DIGITS = {0x7D: 0, 0x05: 1, 0x5B: 2, 0x1F: 3, 0x27: 4, 0x3E: 5, 0x7E: 6, 0x15: 7, 0x7F: 8, 0x3F: 9}


def read(frame):
    """Read a frame with the table of segments alone: value, unit, hold, battery."""
    n = [byte & 15 for byte in frame]
    codes = [(n[k] & 7) << 4 | n[k + 1] for k in (1, 3, 5, 7)]
    unit = {4: "V", 8: "A", 0: "OHM" if n[11] & 4 else ""}[n[12] & 12]
    if 0x68 in codes:
        return None, unit, bool(n[11] & 1), bool(n[12] & 1)
    value = float("".join(str(DIGITS[code]) for code in codes))
    for place, byte in ((1, 3), (2, 5), (3, 7)):
        if n[byte] & 8:
            value /= 10 ** (4 - place)
    value *= 1e-3 if n[10] & 8 else 1.0
    return -value if n[1] & 8 else value, unit, bool(n[11] & 1), bool(n[12] & 1)


class Hand:
    """A hand-held meter on a fan that is off until somebody commands a speed."""

    def __init__(self, name="hand-meter", scenario="healthy-new", point="motor-return"):
        self.profile = load_meter(name)
        self.play = Play(find_scenario(scenario), 3, scripted=False)
        channel = self.profile.channels[0].name
        probes = {} if name.endswith("amps") else {channel: point}
        self.model = MeterModel(self.profile, scenario, 3, probes)
        self.voice = LcdVoice(self.play, self.model)
        self.voice.greet(0.0)
        (self.banner,) = self.until(0.0)

    def until(self, now_s):
        self.play.advance(self.play.steps_at(now_s))
        return self.voice.say(now_s)

    def seen(self, now_s):
        return [read(frame) for frame in self.until(now_s)]


def test_the_first_thing_it_says_is_that_it_is_virtual():
    assert Hand().banner.startswith(b"# VIRTUAL BENCH")


def test_the_line_comes_as_soon_as_the_silence_after_opening_is_over():
    hand = Hand()
    voice = LcdVoice(hand.play, hand.model, quiet_s=0.05)
    voice.greet(1.0)
    assert voice.due_s() == pytest.approx(1.05)
    hand.play.advance(hand.play.steps_at(1.1))
    assert voice.say(1.049) == []
    assert len(voice.say(1.05)) == 1
    assert voice.due_s() == pytest.approx(1.2)


def test_a_frame_comes_every_interval_and_shows_the_voltage():
    seen = Hand().seen(2.0)
    assert len(seen) == 5
    for value, unit, hold, battery in seen:
        assert value == pytest.approx(12.47, abs=0.1)
        assert (unit, hold, battery) == ("V", False, False)


def test_another_range_leaves_the_display_blank_for_half_a_second():
    hand = Hand()
    hand.until(2.0)
    hand.play.do(speed(2.0, 4))
    seen = hand.seen(6.0)
    ((at_s, kind, top),) = hand.voice.news()
    assert (kind, top) == ("ranged", "0.6 V")
    # One frame of the old range while the fan starts, none for half a second, then the new one.
    blank = [k for k in range(6, 16) if at_s <= k * 0.4 < at_s + 0.5]
    assert len(blank) == 2
    assert len(seen) == 10 - len(blank)
    assert 0.05 < seen[-1][0] < 0.3  # the drop of a controller that is full on, and of ground
    assert hand.voice.news() == []


def test_values_agree_with_what_our_decoder_makes_of_them():
    hand = Hand()
    decoder = LcdFrameDecoder(hand.profile.channels)
    decoder.feed(hand.banner)
    refused = decoder.refused
    assert decoder.feed(b"".join(hand.until(2.0))).values[:, 0] == pytest.approx(12.47, abs=0.1)
    hand.play.do(speed(2.0, 4))
    frames = hand.until(6.0)
    readings = decoder.feed(b"".join(frames))
    assert readings.values[:, 0] == pytest.approx([read(frame)[0] for frame in frames])
    assert [(r.kind, r.text[:11]) for r in readings.remarks] == [(EventKind.RANGE, "range 0.6 V")]
    assert decoder.refused == refused


def test_a_turned_dial_shows_another_unit_and_back():
    hand = Hand()
    hand.until(1.0)
    hand.voice.keys["dial"]("A", 1.0)
    assert {unit for _, unit, _, _ in hand.seen(3.0)} == {"A"}
    hand.voice.keys["dial"]("OHM", 3.0)
    assert hand.seen(5.0)[0] == (None, "OHM", False, False)
    hand.voice.keys["dial"]("V", 5.0)
    seen = hand.seen(7.0)
    assert len(seen) == 4  # at 5.2 it is still turning
    assert seen[0][0] == pytest.approx(12.47, abs=0.1)


def test_a_held_display_says_so_and_does_not_follow_the_circuit():
    hand = Hand()
    before = hand.seen(1.0)[-1][0]
    hand.model.hold(on=True)
    hand.play.do(speed(1.0, 4))
    held = hand.seen(4.0)
    assert {(value, hold) for value, _, hold, _ in held} == {(before, True)}
    hand.model.hold(on=False)
    after = hand.seen(6.0)[-1]
    assert after[0] < 1.0
    assert not after[2]
    hand.model.hold(on=True)
    hand.voice.keys["dial"]("A", 6.0)
    assert hand.seen(8.0)[-1][1:3] == ("A", False)


def test_a_low_battery_is_shown_until_it_is_replaced():
    hand = Hand()
    hand.voice.keys["battery-low"]("on", 0.0)
    assert {battery for *_, battery in hand.seen(1.0)} == {True}
    hand.voice.keys["battery-low"]("off", 1.0)
    assert {battery for *_, battery in hand.seen(2.0)} == {False}


def test_beyond_a_range_kept_by_hand_there_is_overload():
    hand = Hand()
    hand.until(1.0)
    press = hand.voice.keys["range"]
    press("next", 1.0)
    assert hand.voice.news() == []
    for step in range(3):  # 600 V, 0.6 V, 6 V
        press("next", 1.0 + step)
    assert [news[2] for news in hand.voice.news()] == ["600 V", "0.6 V", "6 V"]
    assert hand.seen(5.0)[-1][0] is None
    press("auto", 5.0)
    assert hand.seen(7.0)[-1][0] == pytest.approx(12.47, abs=0.1)


def test_a_current_is_shown_in_amperes():
    hand = Hand("hand-meter-amps")
    hand.play.do(speed(0.0, 4))
    value, unit, _, _ = hand.seen(6.0)[-1]
    assert unit == "A"
    assert 10.0 < value < 30.0


def test_behind_a_clamp_it_shows_the_volts_that_the_clamp_gives():
    hand = Hand(point="clamp-10mv-per-a")
    hand.play.do(speed(0.0, 4))
    value, unit, _, _ = hand.seen(6.0)[-1]
    current = hand.play.span(hand.play.steps - 1000, hand.play.steps)[:, 3].mean()
    assert unit == "V"
    assert value == pytest.approx(0.01 * current, rel=0.01)
    hand.model.kill_clamp(on=True)
    quiet = {value for value, *_ in hand.seen(10.0)[-4:]}
    assert len(quiet) == 1
    assert quiet.pop() == pytest.approx(0.0, abs=0.001)


def test_overload_is_told_by_our_decoder_too():
    hand = Hand()
    hand.until(1.0)
    for _ in range(3):
        hand.voice.keys["range"]("next", 1.0)
    decoder = LcdFrameDecoder(hand.profile.channels)
    flags = decoder.feed(b"".join(hand.until(3.0))).flags
    assert set(flags[:, 0]) == {int(Flag.OVERLOAD)}


def test_a_profile_with_two_channels_can_not_be_shown_on_one_display():
    profile = load_meter("line-logger")
    play = Play(find_scenario("healthy-new"), 1)
    with pytest.raises(UsageError, match="has 3 channels, but a frame shows one"):
        LcdVoice(play, MeterModel(profile, "healthy-new", 1))
