"""Readings typed by hand: what is understood, what is refused, and where they go."""

import math
import time

import pytest

from meterlog.model import Channel, Flag, Instrument, Limits, Origin, Quantity
from meterlog.model.errors import UsageError
from meterlog.recording import Recording
from meterlog.work import Run, Wiring, choose_meters, parse_reading, reading_words
from meterlog.work.typed_reading import beyond_words


def meter(key, *channels, typed=True):
    return Instrument(key, key, "typed:", channels, typed=typed)


VOLTS = Channel("volts", Quantity.VOLTAGE)
CLAMP = Channel("clamp", Quantity.CURRENT, scale=100.0, offset=0.5)
ONE = meter("hand", VOLTS)
TWO = meter("pair", VOLTS, CLAMP)
LIVE = meter("logger", VOLTS, typed=False)


@pytest.mark.parametrize(
    ("words", "value"),
    [
        ("12.43", 12.43),
        ("12,43", 12.43),
        ("-0,5", -0.5),
        ("\N{MINUS SIGN}3", -3.0),
        ("+7", 7.0),
        (".8", 0.8),
        ("5.", 5.0),
        ("hand 1", 1.0),
    ],
)
def test_a_number_is_understood_with_point_or_comma(words, value):
    assert parse_reading(words, [LIVE, ONE]) == (ONE, (value,))


@pytest.mark.parametrize(
    "words", ["twelve", "12V", "12 V", "1e3", "nan", "inf", "1.2.3", "1.234,5", "0x1", "--1", "½"]
)
def test_what_is_no_plain_number_is_refused_with_what_was_expected(words):
    with pytest.raises(UsageError, match="is no number") as caught:
        parse_reading(words, [ONE])
    assert "VOLTS" in caught.value.remedy


def test_several_numbers_and_several_meters():
    assert parse_reading("pair 12,4 0,05", [ONE, TWO]) == (TWO, (12.4, 0.05))
    with pytest.raises(UsageError, match="more than one meter") as caught:
        parse_reading("12.4", [ONE, TWO])
    assert "hand, pair" in caught.value.remedy
    with pytest.raises(UsageError, match="no number was typed"):
        parse_reading("hand", [ONE, TWO])
    with pytest.raises(UsageError, match="no number was typed"):
        parse_reading("", [ONE])


def test_a_meter_that_is_read_by_the_program_takes_no_typed_reading():
    with pytest.raises(UsageError, match="no meter of this recording is typed by hand"):
        parse_reading("12.4", [LIVE])
    with pytest.raises(UsageError, match="is no number"):
        parse_reading("logger 12.4", [LIVE, ONE])


def test_what_was_taken_is_said_with_its_unit_and_behind_a_clamp_as_amperes():
    assert reading_words(ONE, [12.43]) == "hand: volts 12.43 V"
    assert reading_words(TWO, [12.0, 0.05]) == "pair: volts 12 V, clamp 0.05 shown, 4.5 A"


@pytest.mark.parametrize(
    ("instrument", "values", "words"),
    [
        (ONE, [126.0], "126 V? A 12 V circuit has at most 18 V: is the decimal point right"),
        (ONE, [-126.0], "-126 V?"),
        (ONE, [18.0], ""),
        (ONE, [12.6], ""),
        (TWO, [12.0, 50.0], ""),  # millivolts of a clamp are amperes
    ],
)
def test_a_voltage_that_can_not_be_on_the_circuit_is_asked_about(instrument, values, words):
    said = beyond_words(instrument, values, 12.0)
    assert said.startswith(words)
    assert bool(said) is bool(words)


@pytest.fixture
def run(tmp_path):
    wiring = Wiring(["typed-volts@typed:", "typed-volts@typed:second"])
    run = Run(choose_meters(wiring), Limits(), tmp_path / "run")
    run.start()
    yield run
    run.stop()


def test_typed_readings_go_to_their_meter_at_the_time_they_are_typed(run, tmp_path):
    before = run.now_ns()
    run.type_reading("typed-volts-2", [12.43])
    after = run.now_ns()
    run.stop()
    recording = Recording.open(tmp_path / "run")
    assert recording.about.origin is Origin.TYPED
    (block,) = recording.blocks("typed-volts-2")
    assert before <= int(block.t_ns[0]) <= after
    assert block.values.tolist() == [[12.43]]
    assert block.flags.tolist() == [[int(Flag.TYPED)]]
    assert list(recording.blocks("typed-volts")) == []
    with pytest.raises(UsageError, match="nothing is being recorded"):
        run.type_reading("typed-volts", [12.0])


def test_what_is_typed_right_before_the_end_is_kept(run, tmp_path):
    for number in range(200):
        run.type_reading("typed-volts", [float(number)])
    run.stop()
    recording = Recording.open(tmp_path / "run")
    kept = [value for block in recording.blocks("typed-volts") for value in block.values[:, 0]]
    assert kept == [float(number) for number in range(200)]


@pytest.mark.parametrize(
    ("key", "values", "words"),
    [
        ("typed-amps", [1.0], "is no meter that is typed by hand"),
        ("typed-volts", [], "0 numbers are not one for each channel"),
        ("typed-volts", [1.0, 2.0], "2 numbers are not one for each channel"),
        ("typed-volts", [math.nan], "must be a finite number"),
        ("typed-volts", [math.inf], "must be a finite number"),
    ],
)
def test_a_reading_that_does_not_fit_is_refused_and_nothing_is_kept(run, key, values, words):
    with pytest.raises(UsageError, match=words):
        run.type_reading(key, values)
    assert sum(run.status().rows.values()) == 0


def test_a_typed_meter_is_alive_however_long_nobody_types(run):
    time.sleep(0.3)
    states = run.status().meters
    assert [(one.alive, one.typed, one.message) for one in states] == [(True, True, "")] * 2
    assert sum(run.status().rows.values()) == 0
    assert run.status().events == ()
