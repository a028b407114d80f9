import dataclasses

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.instruments import BlockDecoder
from meterlog.instruments.virtual.block_voice import MEMORY_BYTES, MOST_PPM, BlockVoice
from meterlog.instruments.virtual.meter import MeterModel
from meterlog.instruments.virtual.play import Play
from meterlog.instruments.virtual.scenarios import find_scenario
from meterlog.instruments.virtual.simulate import model_step_s
from meterlog.profile import load_meter


class Box:
    """A sampling box on a scenario that runs by itself, and a clock that is set by hand."""

    def __init__(self, name="block-daq", scenario="healthy-new", seed=1, **layout):
        profile = load_meter(name)
        self.profile = dataclasses.replace(
            profile, blocks=dataclasses.replace(profile.blocks, **layout)
        )
        self.play = Play(find_scenario(scenario), seed, step_s=model_step_s(self.profile))
        self.voice = BlockVoice(self.play, MeterModel(self.profile, scenario, seed))
        self.ppm = self.voice.card["sample_clock_ppm"]
        self.now_s = 0.0
        self.voice.greet(0.0)

    def at(self, now_s):
        """Go on until ``now_s`` as the bench does, and give what is said on the way."""
        said = b""
        while self.now_s < now_s:
            self.now_s = min(now_s, self.now_s + 0.01)
            self.play.advance(self.play.steps_at(self.now_s))
            said += b"".join(self.voice.say(self.now_s))
        return said

    def ask(self, text):
        self.voice.hear(text.encode() + b"\n", self.now_s)
        return b"".join(self.voice.say(self.now_s))

    def rows(self, answer, form=">i2"):
        """Take a block of definite length apart."""
        assert answer[:1] == b"#"
        digits = int(answer[1:2])
        size = int(answer[2 : 2 + digits])
        assert answer[2 + digits + size :] == b"\n"
        return np.frombuffer(answer[2 + digits : -1], form).reshape(-1, 3)


def test_a_query_gives_the_rows_since_the_last_one():
    box = Box()
    box.ask("INIT")
    box.at(0.1)
    first = box.rows(box.ask("FETC?"))
    assert len(first) in {99, 100}
    box.at(0.35)
    total = len(first) + len(box.rows(box.ask("FETC?")))
    assert total in {349, 350}
    assert first[:, 0] * 0.001 == pytest.approx(12.47, abs=0.1)
    assert first[:, 2] * 0.003 == pytest.approx(0.0, abs=0.2)


def test_samples_follow_the_circuit_by_the_boxs_own_clock():
    box = Box(scenario="dead-spot")
    ppm = box.voice.card["sample_clock_ppm"]
    assert 0.0 < abs(ppm) <= MOST_PPM
    box.ask("INIT")
    box.at(5.0)
    current = box.rows(box.ask("FETC?"))[:, 2] * 0.003
    assert len(current) == int(5.0 / (0.001 * (1.0 + ppm * 1e-6)) + 1e-6)
    # The tap at 3.6 s sets the motor running; the row of a time is counted by the own clock.
    flows = np.flatnonzero(np.abs(current) > 1.0)[0]
    tapped = next(span.end_s for span in box.play.spans() if span.kind.value == "dead")
    assert (flows + 1) * 0.001 * (1.0 + ppm * 1e-6) == pytest.approx(tapped, abs=0.003)


def test_clocks_of_two_specimens_differ():
    assert len({Box(seed=seed).voice.card["sample_clock_ppm"] for seed in range(5)}) == 5


def test_a_real_box_tells_volts_and_amperes_in_the_order_asked_for():
    box = Box("block-daq-float")
    box.ask("FORM REAL,32;:FORM:BORD SWAP;:INIT")
    box.at(0.05)
    assert box.rows(box.ask("FETC?"), "<f4")[:, 0] == pytest.approx(12.47, abs=0.1)
    assert box.ask("FORM?;:FORM:BORD?") == b"REAL,32;SWAP\n"
    box.ask("FORM REAL,64;:FORM:BORD NORM")
    box.at(0.1)
    assert box.rows(box.ask("READ?"), ">f8")[:, 0] == pytest.approx(12.47, abs=0.1)
    box.ask("FORM HEX")
    assert box.ask("SYST:ERR?") == b'-224,"Illegal parameter value;HEX"\n'


def test_a_block_of_indefinite_length_has_the_profiles_rows():
    box = Box(rows=50)
    box.ask("INIT")
    assert box.ask("FETC?") == b""
    assert box.at(0.04) == b""
    answer = box.at(0.06)
    assert answer[:2] == b"#0"
    assert len(answer) == 2 + 50 * 6 + 1
    box.at(0.5)
    assert len(box.ask("FETC?")) == 2 + 50 * 6 + 1


def test_a_query_before_there_is_a_row_waits_for_one():
    box = Box()
    assert box.ask("READ?") == b""
    assert len(box.rows(box.at(0.011))) >= 1


def test_fetch_without_sampling_is_an_error_and_gives_no_answer():
    box = Box()
    assert box.ask("FETC?") == b""
    assert box.at(1.0) == b""
    assert box.ask("SYST:ERR?").startswith(b"-230,")
    box.ask("INIT")
    box.at(1.1)
    box.ask("ABOR")
    assert box.ask("FETC?") == b""
    assert box.ask("SYST:ERR?").startswith(b"-230,")


def test_rows_that_nobody_fetches_overrun_the_memory_and_the_loss_is_told():
    box = Box(sample_s=0.0001)
    room = MEMORY_BYTES // 6
    box.ask("INIT")
    box.at(2.0)
    assert box.voice.news() == []
    rows = box.rows(box.ask("FETC?"))
    assert len(rows) == room
    ((at_s, kind, words),) = box.voice.news()
    assert kind == "overrun"
    assert at_s == pytest.approx((room + 1) * 0.0001 * (1.0 + box.ppm * 1e-6), abs=1e-9)
    lost = int(words.removesuffix(" rows lost"))
    assert room + lost == pytest.approx(20_000, abs=2)
    assert box.ask("SYST:ERR?") == b'-363,"Input buffer overrun"\n'
    assert box.ask("SYST:ERR?").startswith(b"0,")
    box.at(2.1)
    assert len(box.rows(box.ask("FETC?"))) == pytest.approx(1000, abs=2)
    assert box.voice.news() == []


@given(st.lists(st.floats(0.001, 3.0), max_size=12))
@settings(max_examples=25)
def test_the_first_row_lost_is_told_of_alike_however_late_the_bench_looks(looks_s):
    box = Box(sample_s=0.0001)
    box.ask("INIT")
    for now_s in [*np.cumsum(looks_s), 40.0]:
        box.now_s = min(40.0, now_s)
        box.play.advance(box.play.steps_at(box.now_s))
        assert b"".join(box.voice.say(box.now_s)) == b""
    room = MEMORY_BYTES // 6
    assert len(box.rows(box.ask("FETC?"))) == room
    ((at_s, _, words),) = box.voice.news()
    sample_s = 0.0001 * (1.0 + box.ppm * 1e-6)
    assert at_s == pytest.approx((room + 1) * sample_s, abs=1e-9)
    assert int(words.removesuffix(" rows lost")) == int(40.0 / sample_s) - room


def test_a_client_that_comes_anew_finds_nothing_sampled():
    box = Box()
    box.ask("INIT")
    box.at(0.5)
    box.voice.greet(0.5)
    assert box.ask("FETC?") == b""
    assert box.ask("*IDN?").startswith(b"VIRTUAL,block-daq,1,")


@pytest.mark.parametrize("name", ["block-daq", "block-daq-float"])
@pytest.mark.parametrize("rows", [0, 20])
def test_our_decoder_reads_what_it_says(name, rows):
    box = Box(name, rows=rows)
    decoder = BlockDecoder(box.profile.blocks, box.profile.channels)
    box.ask("INIT")
    box.at(0.1)
    readings = decoder.feed(box.ask("FETC?"))
    if not len(readings):
        readings = decoder.message_end()
    scale = box.profile.channels[0].scale
    assert len(readings) in ({20} if rows else {99, 100})
    assert readings.values[:, 0] * scale == pytest.approx(12.47, abs=0.1)
    assert decoder.refused == 0
