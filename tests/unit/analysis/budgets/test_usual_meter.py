"""What a meter may be off by of which nobody has said how good it is; figures by hand."""

from dataclasses import replace

import pytest

from meterlog.analysis.budgets.usual_error import usual_more, usual_words
from meterlog.analysis.stated_channel import StatedChannel
from meterlog.model import FindingKind, Instrument, Sensor, SensorKind, Verdict, Zero


def home(bench, **changes):
    options = {"accuracy": None, "ranges": ()}
    amps = replace(bench.channels()[2], **(options | changes))
    return StatedChannel(Instrument("meter", "test", "-", (amps,)), 0)


def test_one_that_reads_amperes_errs_as_a_usual_clamp_by_turns_of_the_wire(bench):
    assert usual_more(home(bench), 10.0, at_rest=False) == pytest.approx(0.2 + 0.3)
    ten = home(bench, sensor=replace(bench.channels()[2].sensor, turns=10), zero=Zero(0.0, 0.01, 9))
    assert usual_more(ten, 1.0, at_rest=False) == pytest.approx(0.02 + 0.03)


def test_behind_a_shunt_and_a_clamp_it_reads_volts_and_has_no_fixed_part(bench):
    shunt = Sensor(SensorKind.SHUNT, 1000.0, words="100 A/100 mV", own_percent=1.0, own_floor=0.0)
    assert usual_more(home(bench, sensor=shunt), 10.0, at_rest=False) == pytest.approx(0.2)
    clamp = Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A")
    # Two devices: 2 % of the meter, 2 % and 0.3 A of the clamp.
    both = home(bench, sensor=clamp, zero=Zero(0.0, 0.01, 9))
    assert usual_more(both, 10.0, at_rest=False) == pytest.approx((0.2**2 + 0.5**2) ** 0.5)


@pytest.mark.parametrize(("read_a", "off_a"), [(0.0, 0.0), (0.05, 0.051), (0.28, 0.2856)])
def test_what_is_read_where_nothing_flows_is_how_far_its_zero_is_off(bench, read_a, off_a):
    assert usual_more(home(bench), read_a, at_rest=True) == pytest.approx(off_a)
    zeroed = home(bench, zero=Zero(0.0, 0.01, 9))
    assert usual_more(zeroed, read_a, at_rest=True) == pytest.approx(0.02 * read_a)


def test_the_words_name_all_that_is_missing(bench):
    assert usual_words(home(bench), 0.5) == (
        "; the meter's accuracy is not known, and a usual one (0.5 A) could turn the verdict over"
    )
    clamp = Sensor(SensorKind.CLAMP, 100.0, words="10 mV/A")
    assert usual_words(home(bench, sensor=clamp), 0.71) == (
        "; the meter's accuracy and the clamp's own error and zero are not known, and usual ones"
        " (0.71 A together) could turn the verdict over"
    )


def _findings(trace, kind, rows, amps):
    fan = trace.Fan()
    fan.channels = tuple(replace(one, accuracy=None) for one in fan.channels)
    fan.values[rows(fan.t_s)] = amps
    return [one for one in fan.review().findings if one.kind is kind]


@pytest.mark.parametrize(
    ("amps", "verdict"), [(0.002, Verdict.FAIL), (0.1, Verdict.FAIL), (0.27, Verdict.CANT_TELL)]
)
def test_a_dead_segment_is_proven_where_the_zero_can_not_hide_a_current(trace, amps, verdict):
    (dead,) = _findings(
        trace, FindingKind.DEAD, lambda t: (t >= 8.0) & (t < 10.0), (12.4, 0.02, amps)
    )
    assert dead.verdict is verdict
    assert ("could turn the verdict over" in dead.statement) is (verdict is Verdict.CANT_TELL)


def test_a_current_though_off_is_commanded_says_why_it_can_not_be_told(trace):
    (over,) = _findings(trace, FindingKind.OVER, lambda t: t < 3.0, (12.5, 4.4, 0.55))
    assert over.verdict is Verdict.CANT_TELL
    assert "Current although off is commanded" in over.statement
    assert "the meter's accuracy is not known" in over.statement
