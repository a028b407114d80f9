"""Laws of the elements: their currents by hand, their slopes by finite differences."""

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from meterlog.circuit.element_currents import LAWS
from meterlog.model.circuit import ElementKind

MOTOR = {"ohm": 0.2, "no_load_a": 0.7, "fan_a_per_v2": 0.15}
STAGE = {"gain_a_per_v2": 15.0, "threshold_v": 2.0}
REGULATOR = {"ohm": 0.05, "volts_per_volt": 2.0, "loop_gain": 20.0}
CHOPPER = {"ohm": 0.03, "start_v": 1.0, "full_v": 5.0}
HEAD = {"ohm": 1000.0, "drive_v": 6.0, "least_v": 0.0, "most_v": 10.0, "loop_gain": 20.0}
OPEN_LOOP, CLOSED_LOOP = HEAD | {"closed_loop": 0.0}, HEAD | {"closed_loop": 1.0}
CASES = {
    "motor": (ElementKind.MOTOR, MOTOR, 2),
    "seized motor": (ElementKind.MOTOR, MOTOR | {"no_load_a": 1e6}, 2),
    "transistor": (ElementKind.TRANSISTOR, STAGE, 3),
    "regulator": (ElementKind.REGULATOR, REGULATOR, 4),
    "chopper": (ElementKind.CHOPPER, CHOPPER, 4),
    "head": (ElementKind.HEAD, OPEN_LOOP, 2),
    "head with sense, open loop": (ElementKind.HEAD, OPEN_LOOP, 3),
    "head with sense": (ElementKind.HEAD, CLOSED_LOOP, 3),
}
VOLTS = st.floats(-3.0, 15.0)


def one(figures):
    return {name: np.array([value]) for name, value in figures.items()}


def stamps(kind, figures, volts, held=None):
    return LAWS[kind].currents(one(figures), [np.array([v]) for v in volts], held)


def amps(kind, figures, *volts):
    """Current that goes into each terminal."""
    into = np.zeros(len(volts))
    for stamp in stamps(kind, figures, volts):
        into[stamp.leaves] += stamp.amps[0]
        into[stamp.enters] -= stamp.amps[0]
    return into


def bends(name, volts):
    """How far the nearest kink of a law is, in volts: no slope to compare with there."""
    kind, figures, _ = CASES[name]
    if kind is ElementKind.MOTOR:
        return abs(abs(volts[0] - volts[1]) - figures["no_load_a"] * figures["ohm"])
    if kind is ElementKind.TRANSISTOR:
        drain, source, gate = volts
        over = gate - min(drain, source) - figures["threshold_v"]
        return min(abs(drain - source), abs(over), abs(over - abs(drain - source)))
    if kind is ElementKind.REGULATOR:
        lack = LAWS[kind].inner(one(figures), [np.array([v]) for v in volts])[0]
        return min(abs(lack), abs(lack - 1.0)) / figures["loop_gain"]
    if kind is ElementKind.CHOPPER:
        duty = (volts[3] - volts[2] - figures["start_v"]) / 4.0
        return min(abs(duty), abs(duty - 0.01), abs(duty - 1.0)) * 4.0
    return 1.0


@pytest.mark.parametrize("name", CASES)
@given(st.data())
def test_slopes_are_those_of_finite_differences(name, data):
    kind, figures, terminals = CASES[name]
    volts = [data.draw(VOLTS) for _ in range(terminals)]
    if kind is ElementKind.REGULATOR and data.draw(st.booleans()):  # into its narrow band
        volts[1] = volts[2] + 2.0 * (volts[3] - volts[2]) - data.draw(st.floats(0.002, 0.048))
    if name == "head with sense" and data.draw(st.booleans()):
        volts[2] = volts[1] + figures["drive_v"] + data.draw(st.floats(-0.5, 0.5))
    if kind is ElementKind.CHOPPER and data.draw(st.booleans()):
        volts[3] = volts[2] + figures["start_v"] + data.draw(st.floats(0.002, 0.038))
    assume(bends(name, volts) > 1e-4)
    step = 1e-6
    for at in range(terminals):
        up, down = list(volts), list(volts)
        up[at] += step
        down[at] -= step
        pairs = zip(stamps(kind, figures, up), stamps(kind, figures, down), strict=True)
        for stamp, (more, less) in zip(stamps(kind, figures, volts), pairs, strict=True):
            by_steps = (more.amps[0] - less.amps[0]) / (2.0 * step)
            largest = max(abs(float(by[0])) for by in stamp.slopes)
            slope = float(np.broadcast_to(stamp.slopes[at], 1)[0])
            assert slope == pytest.approx(by_steps, abs=1e-5 * (largest + 1.0))


@pytest.mark.parametrize("name", CASES)
@given(st.data())
def test_nothing_depends_on_where_zero_volts_are(name, data):
    kind, figures, terminals = CASES[name]
    volts = [data.draw(VOLTS) for _ in range(terminals)]
    lifted = [each + 3.0 for each in volts]
    largest = max(np.abs(amps(kind, figures, *volts)).max(), 1.0)
    np.testing.assert_allclose(
        amps(kind, figures, *lifted), amps(kind, figures, *volts), atol=1e-9 * largest
    )
    for stamp in stamps(kind, figures, volts):
        slopes = [float(np.broadcast_to(by, 1)[0]) for by in stamp.slopes]
        assert sum(slopes) == pytest.approx(0.0, abs=1e-9 * max(map(abs, slopes), default=1.0))


@given(st.floats(0.2, 15.0))
def test_a_motor_obeys_its_two_equations(volts):
    current = amps(ElementKind.MOTOR, MOTOR, volts, 0.0)[0]
    emf = volts - current * MOTOR["ohm"]
    assert current == pytest.approx(MOTOR["no_load_a"] + MOTOR["fan_a_per_v2"] * emf**2)


def test_a_motor_stands_until_it_has_its_friction_s_current():
    starts_at = MOTOR["no_load_a"] * MOTOR["ohm"]
    below = amps(ElementKind.MOTOR, MOTOR, 0.9 * starts_at, 0.0)[0]
    assert below == pytest.approx(0.9 * MOTOR["no_load_a"])
    at = [amps(ElementKind.MOTOR, MOTOR, starts_at + off, 0.0)[0] for off in (-1e-9, 1e-9)]
    assert at == pytest.approx([MOTOR["no_load_a"]] * 2, rel=1e-7)


@given(st.floats(-15.0, 15.0))
def test_a_motor_the_other_way_round_draws_the_same(volts):
    there = amps(ElementKind.MOTOR, MOTOR, volts, 0.0)
    back = amps(ElementKind.MOTOR, MOTOR, 0.0, volts)
    np.testing.assert_allclose(there, back[::-1])


@given(st.floats(-15.0, 15.0))
def test_a_seized_motor_is_its_winding(volts):
    current = amps(ElementKind.MOTOR, MOTOR | {"no_load_a": 1e6}, volts, 0.0)[0]
    assert current == pytest.approx(volts / MOTOR["ohm"])


@pytest.mark.parametrize(
    ("drain", "source", "gate", "current"),
    [
        (10.0, 0.0, 2.0, 0.0),  # at the threshold: cut off
        (10.0, 0.0, 4.0, 15.0 / 2.0 * 2.0**2),  # saturated: k/2 over²
        (2.0, 0.0, 4.0, 15.0 / 2.0 * 2.0**2),  # where it leaves saturation
        (0.5, 0.0, 4.0, 15.0 * (2.0 * 0.5 - 0.5**2 / 2.0)),  # linear: k (over V - V²/2)
        (0.0, 0.5, 4.0, -15.0 * (2.0 * 0.5 - 0.5**2 / 2.0)),  # the other way round
    ],
)
def test_a_transistor_follows_level_1(drain, source, gate, current):
    into = amps(ElementKind.TRANSISTOR, STAGE, drain, source, gate)
    np.testing.assert_allclose(into, [current, -current, 0.0], atol=1e-12)


@pytest.mark.parametrize(
    ("out", "part"), [(8.1, 0.0), (8.0, 0.0), (7.975, 0.5), (7.95, 1.0), (3.0, 1.0)]
)
def test_a_regulator_opens_as_far_as_the_output_lacks(out, part):
    into = amps(ElementKind.REGULATOR, REGULATOR, 12.0, out, 0.0, 4.0)
    current = part * (12.0 - out) / REGULATOR["ohm"]
    np.testing.assert_allclose(into, [current, -current, 0.0, 0.0], atol=1e-9)


@pytest.mark.parametrize(("command", "duty"), [(0.5, 0.0), (2.0, 0.25), (3.0, 0.5), (9.0, 1.0)])
def test_a_chopper_takes_its_duty_of_the_output_current_from_the_supply(command, duty):
    out = duty * 12.0 - 10.0 * CHOPPER["ohm"]  # where 10 A flow, if any
    into = amps(ElementKind.CHOPPER, CHOPPER, 12.0, out, 0.0, command)
    current = 10.0 if duty else 0.0
    np.testing.assert_allclose(
        into, [duty * current, -current, (1.0 - duty) * current, 0.0], atol=1e-9
    )


def test_a_chopper_comes_on_without_a_jump():
    at = [
        amps(ElementKind.CHOPPER, CHOPPER, 12.0, -1.0, 0.0, 1.0 + 4.0 * duty)[1]
        for duty in (0.0, 1e-9, 0.01 - 1e-9, 0.01 + 1e-9)
    ]
    assert at[:2] == pytest.approx([0.0, 0.0], abs=1e-5)
    assert at[2] == pytest.approx(at[3], rel=1e-5)


def test_a_head_is_a_voltage_behind_its_resistance():
    into = amps(ElementKind.HEAD, OPEN_LOOP, 2.0, 0.5)
    np.testing.assert_allclose(into, [(2.0 - 0.5 - 6.0) / 1000.0, 4.5 / 1000.0])


@pytest.mark.parametrize(("sensed", "asked"), [(0.0, 0.0), (6.0, 5.0), (12.0, 10.0)])
def test_a_head_with_sense_asks_for_more_the_higher_its_sense(sensed, asked):
    into = amps(ElementKind.HEAD, CLOSED_LOOP, 0.0, 0.0, sensed)
    assert into[0] == pytest.approx(-asked / 1000.0, abs=1e-9)
    assert into[2] == 0.0
    open_loop = amps(ElementKind.HEAD, OPEN_LOOP, 0.0, 0.0, sensed)
    assert open_loop[0] == pytest.approx(-6.0 / 1000.0)


def test_a_head_with_sense_has_its_gain_in_the_middle():
    low, high = (
        amps(ElementKind.HEAD, CLOSED_LOOP, 0.0, 0.0, 6.0 + off)[0] for off in (-1e-5, 1e-5)
    )
    # Volts asked for by volts sensed: 4 x loop gain x 1/4.
    assert (low - high) * 1000.0 / 2e-5 == pytest.approx(20.0, rel=1e-6)


INNER = {
    "regulator": (ElementKind.REGULATOR, REGULATOR, [12.0, 7.97, 0.1, 4.0]),
    "head with sense": (ElementKind.HEAD, CLOSED_LOOP, [2.0, 0.1, 6.3]),
}


@pytest.mark.parametrize("name", INNER)
def test_held_to_the_inner_value_of_its_voltages_a_law_is_itself(name):
    kind, figures, volts = INNER[name]
    inner = LAWS[kind].inner(one(figures), [np.array([v]) for v in volts])
    for free, held in zip(
        stamps(kind, figures, volts), stamps(kind, figures, volts, inner), strict=True
    ):
        np.testing.assert_array_equal(free.amps, held.amps)
        for by, by_held in zip(free.slopes, held.slopes, strict=True):
            np.testing.assert_array_equal(by, by_held)


@given(st.floats(-20.0, 20.0), st.floats(-2.0, 2.0))
def test_held_elsewhere_a_head_is_on_the_tangent_there(held_at, off):
    volts = [2.0, 0.1, 6.1 + off]
    held = np.array([held_at])
    logistic = 1.0 / (1.0 + np.exp(-held_at))
    inner = 8.0 * off  # 4 x loop gain / span x what the sense is above 6 V
    wanted = 10.0 * (logistic + logistic * (1.0 - logistic) * (inner - held_at))
    (stamp,) = stamps(ElementKind.HEAD, CLOSED_LOOP, volts, held)
    assert stamp.amps[0] == pytest.approx((2.0 - 0.1 - wanted) / 1000.0, abs=1e-9)


WITH_LIMIT = [kind for kind, law in LAWS.items() if law.limit is not None]


def test_the_two_steep_kinds_are_limited():
    assert set(WITH_LIMIT) == {ElementKind.REGULATOR, ElementKind.HEAD}
    assert all((law.limit is None) == (law.inner is None) for law in LAWS.values())


@pytest.mark.parametrize("kind", WITH_LIMIT)
@given(old=st.floats(-100.0, 100.0), new=st.floats(-100.0, 100.0))
def test_a_limited_value_gets_where_it_is_going(kind, old, new):
    at = np.array([old])
    for _ in range(60):
        at, before = LAWS[kind].limit(at, np.array([new])), at
        # Never past it, but for the one stop in a regulator's band.
        assert min(before[0], new) - 1.0 <= at[0] <= max(before[0], new) + 1.0
    assert at[0] == new


@given(old=st.floats(-5.9, 5.9), new=st.floats(-100.0, 100.0))
def test_through_the_middle_a_head_goes_in_short_steps(old, new):
    at = LAWS[ElementKind.HEAD].limit(np.array([old]), np.array([new]))[0]
    assert abs(at - old) <= min(2.0 + 1e-12, abs(new - old) + 1e-12)


@pytest.mark.parametrize("kind", LAWS)
def test_nothing_overflows_far_outside(kind):
    name = next(name for name, case in CASES.items() if case[0] is kind)
    _, figures, terminals = CASES[name]
    if kind is ElementKind.HEAD:
        figures, terminals = CLOSED_LOOP, 3
    with np.errstate(all="raise"):
        for sign in (-1.0, 1.0):
            for at in range(terminals):
                volts = [0.0] * terminals
                volts[at] = sign * 1e4
                assert np.isfinite(amps(kind, figures, *volts)).all()
