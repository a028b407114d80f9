"""Isolation: from entries to the unit that is told."""

import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from meterlog.circuit import Isolation, circuit_verdict, left_out
from meterlog.circuit.settling import LEAST_WITHOUT
from meterlog.circuit.suspects import MOST_UNTOLD
from meterlog.circuit.wording import percent
from meterlog.model import CircuitCheck, CircuitReading, CircuitSign, CircuitState, Sign
from meterlog.model.errors import UsageError
from meterlog.profile import load_circuit, shipped_folder

HIGH, LOW, OFF = CircuitState("on", 4), CircuitState("on", 1), CircuitState("off", 0)
FAULTS = (
    ("main fuse open", None),
    ("relay contact: too much resistance", 0.15),
    ("fan motor: dead spot or worn brushes", None),
    ("wire 2 from the pack to the speed switch: too much resistance", 2.0),
    ("nothing electrical", None),
)


def _lasting(isolation):
    """All faults that stay, by their words."""
    return [h.words for h in isolation._predictions.cells.hypotheses if not h.comes_and_goes]


@pytest.mark.parametrize(("words", "severity"), FAULTS)
def test_following_the_proposals_tells_the_unit(technician, words, severity):
    one = technician(words, severity)
    passed = one.isolate()
    last = passed[-1][1]
    assert {last.settled} == (one.units or {"no-fault"}), last.suspects[:3]
    assert len(passed) <= 13
    assert last.suspects[0].probability > 0.95
    assert last.suspects[0].without_best >= LEAST_WITHOUT
    if one.units:
        assert "before parts are ordered" in last.settled_words
    for _, verdict in passed[:-1]:
        assert not verdict.settled
        assert verdict.next_test is not None


def test_the_verdict_names_fault_severity_confirmation_and_cause(technician):
    one = technician("relay contact: too much resistance", 0.15)
    last = one.isolate()[-1][1]
    fault = last.suspects[0].faults[0]
    assert fault.severity_low < 0.16 < fault.severity_high
    assert fault.severity_unit == "Ω"
    assert "Ω" in last.settled_words
    assert one.circuit.unit("relay").confirm.rstrip(".") in last.settled_words
    assert "Look for the cause" in last.settled_words


@settings(max_examples=12, deadline=None)
@given(data=st.data())
def test_the_order_of_entries_changes_nothing(isolation, technician, data):
    one = technician(data.draw(st.sampled_from(_lasting(isolation))))
    points = [point.name for point in isolation.circuit.points]
    chosen = data.draw(st.lists(st.sampled_from(points), min_size=2, max_size=5, unique=True))
    states = data.draw(st.lists(st.sampled_from([HIGH, LOW, OFF]), min_size=5, max_size=5))
    readings = [
        one.read(number, state, point)
        for number, (state, point) in enumerate(zip(states, chosen, strict=False), start=1)
    ]
    signs = [one.look(20, HIGH, Sign.FAN), one.look(21, LOW, Sign.FAN)]
    check = CircuitCheck(isolation.circuit.name, readings=tuple(readings), signs=tuple(signs))
    other = replace(
        check,
        readings=tuple(data.draw(st.permutations(readings))),
        signs=tuple(data.draw(st.permutations(signs))),
    )
    assert isolation.verdict(check) == isolation.verdict(other)


@settings(max_examples=15, deadline=None)
@given(data=st.data())
def test_one_entry_never_settles_anything(isolation, data):
    state = data.draw(st.sampled_from([HIGH, LOW, OFF]))
    if data.draw(st.booleans()):
        point = data.draw(st.sampled_from(isolation.circuit.points)).name
        value = data.draw(st.floats(0.0, 14.0))
        reading = CircuitReading(1, state, point, value, 0.03)
        check = CircuitCheck("c", readings=(reading,))
    else:
        value = data.draw(st.sampled_from(["runs", "dead", "slow", "full"]))
        check = CircuitCheck("c", signs=(CircuitSign(1, state, Sign.FAN, value),))
    assert not isolation.verdict(check).settled


def test_what_was_only_seen_and_heard_settles_nothing(isolation):
    signs = [
        CircuitSign(number, CircuitState("on", speed), Sign.FAN, "full")
        for number, speed in enumerate((1, 2, 3, 4), start=1)
    ]
    check = CircuitCheck("c", signs=tuple(signs))
    verdict = isolation.verdict(check)
    assert not verdict.settled
    assert verdict.next_test is not None


def test_a_reading_that_carries_a_verdict_alone_is_confirmed_first(technician):
    one = technician("main fuse open")
    check = CircuitCheck(
        one.circuit.name,
        signs=(one.look(1, HIGH, Sign.FAN),),
        readings=(one.read(2, HIGH, "main-fuse-drop"),),
    )
    verdict = one.isolation.verdict(check)
    first = verdict.suspects[0]
    assert (first.unit, verdict.settled) == ("main-fuse", "")
    assert first.probability == MOST_UNTOLD
    assert sum(fault.probability for fault in first.faults) <= MOST_UNTOLD
    assert first.without_best < LEAST_WITHOUT
    assert "entry 2 alone carries that" in verdict.settled_words
    after = one.isolation.verdict(one.follow(check, verdict.next_test, 3))
    assert after.settled == "main-fuse"
    told = after.suspects[0]
    left = percent(told.without_best)
    if told.probability - told.without_best >= 0.01:
        assert f"with any one entry left out still {left}, or more" in after.settled_words
    else:
        assert "whichever entry is left out" in after.settled_words


def test_a_slipped_reading_is_doubted_and_the_unit_is_still_found(technician):
    one = technician("main fuse open")
    check = CircuitCheck(
        one.circuit.name,
        signs=(one.look(1, HIGH, Sign.FAN),),
        readings=(
            one.read(2, HIGH, "main-fuse-in"),
            one.read(3, HIGH, "main-fuse-out", value=12.5),  # the probe sat on the other tab
            one.read(4, HIGH, "main-fuse-drop"),
            one.read(5, HIGH, "relay-30"),
            one.read(6, HIGH, "relay-87"),
        ),
    )
    verdict = one.isolation.verdict(check)
    assert [doubt.id for doubt in verdict.doubted] == [3]
    assert one.isolate(check)[-1][1].settled == "main-fuse"


def test_a_higher_probability_may_be_asked_for(isolation, technician):
    strict = Isolation(isolation.circuit, told_at=0.999)
    one = technician("main fuse open")
    one.isolation = strict
    last = one.isolate()[-1][1]
    assert last.settled == "main-fuse"
    assert last.suspects[0].probability > 0.999


@pytest.mark.parametrize("odds", [0.3, 1.0, math.nan, math.inf])
def test_odds_out_of_range_are_refused(isolation, odds):
    with pytest.raises(UsageError, match="can't be told"):
        Isolation(isolation.circuit, told_at=odds)


def test_once_and_kept_are_the_same(isolation, technician):
    one = technician("coil fuse open")
    check = CircuitCheck(one.circuit.name, readings=(one.read(1, HIGH, "coil-fuse-out"),))
    assert circuit_verdict(isolation.circuit, check) == isolation.verdict(check)
    assert isolation.propose(check) == isolation.verdict(check).next_test


def test_a_circuit_in_order_fits_what_is_expected_of_it(isolation, technician):
    one = technician("nothing electrical")
    for state in (HIGH, LOW, OFF):
        bands = isolation.expected(state)
        assert [band.point for band in bands] == [p.name for p in isolation.circuit.points]
        readings = tuple(one.read(at, state, band.point) for at, band in enumerate(bands))
        verdict = isolation.verdict(CircuitCheck("c", readings=readings[:6]))
        assert all(found.fits for found in verdict.expectations)
        assert all(
            band.healthy_low <= reading.value <= band.healthy_high
            for band, reading in zip(bands, readings, strict=True)
        )
    wrong = isolation.verdict(CircuitCheck("c", readings=(one.read(1, HIGH, "relay-87", 9.0),)))
    assert not wrong.expectations[0].fits


def test_notes_tell_what_a_reading_cannot(isolation, technician):
    one = technician("main fuse open")
    off = replace(HIGH, unplugged=frozenset({"motor"}))
    check = CircuitCheck(
        "c",
        readings=(one.read(1, off, "motor-feed", 12.5), one.read(2, OFF, "relay-drop", 0.0)),
    )
    notes = isolation.verdict(check).notes
    assert any(n.startswith("Reading 1: with a plug off nothing flows") for n in notes)
    assert any(n.startswith("Reading 2: a voltage drop") for n in notes)


def _one(reading):
    return CircuitCheck("c", readings=(reading,))


@pytest.mark.parametrize(
    ("check", "words"),
    [
        (_one(CircuitReading(1, HIGH, "nowhere", 1.0, 0.1)), "no test point 'nowhere'"),
        (_one(CircuitReading(1, HIGH, "battery", 300.0, 0.1)), "300 V can't be"),
        (_one(CircuitReading(1, HIGH, "battery", math.nan, 0.1)), "no number"),
        (_one(CircuitReading(1, HIGH, "battery", 12.0, -0.1)), "uncertainty"),
        (_one(CircuitReading(1, HIGH, "battery", 12.0, 0.1, meter_ohm=0.0)), "resistance"),
        (_one(CircuitReading(1, CircuitState("on", 9), "battery", 12.0, 0.1)), "speed '9'"),
        (
            _one(CircuitReading(1, CircuitState("start", 1), "battery", 12.0, 0.1)),
            "the key 'start'",
        ),
        (
            _one(
                CircuitReading(1, replace(HIGH, unplugged=frozenset({"x"})), "battery", 12.0, 0.1)
            ),
            "plug 'x'",
        ),
        (CircuitCheck("c", no_reach=frozenset({"moon"})), "'moon'"),
        (CircuitCheck("c", signs=(CircuitSign(1, HIGH, Sign.FAN, "sings"),)), "'sings'"),
        (
            CircuitCheck(
                "c",
                readings=(CircuitReading(1, HIGH, "battery", 12.0, 0.1),),
                signs=(CircuitSign(1, HIGH, Sign.FAN, "dead"),),
            ),
            "two entries",
        ),
    ],
)
def test_what_cannot_be_is_refused_by_name(isolation, check, words):
    with pytest.raises(UsageError) as refused:
        isolation.verdict(check)
    assert words in str(refused.value)
    assert refused.value.remedy


def test_where_most_readings_contradict_each_other_no_unit_is_told():
    circuit = load_circuit(str(shipped_folder() / "circuits" / "low-side-linear-12v.toml"))
    found = (
        ("relay-30", 7.54), ("main-fuse-out", 2.83), ("motor-return-pin-drop", 10.41),
        ("motor-return-pin-drop", 8.77), ("relay-drop", 0.41), ("battery", 12.40),
        ("motor-return", 5.49), ("battery", 9.44), ("coil-fuse-out", 9.82), ("coil-fuse-in", 7.87),
        ("main-fuse-drop", 12.52), ("battery", -0.67),
    )  # fmt: skip
    readings = tuple(
        CircuitReading(number, HIGH, point, value, 0.05)
        for number, (point, value) in enumerate(found, start=1)
    )
    verdict = Isolation(circuit).verdict(CircuitCheck(circuit.name, readings=readings))
    assert verdict.settled == ""
    assert "readings go with no fault that this circuit can have" in verdict.settled_words
    assert len(verdict.doubted) > 3


def test_sums_of_a_long_check_are_cut_short_at_the_likeliest_cases(technician, monkeypatch):
    one = technician("main fuse open")
    check = CircuitCheck(
        one.circuit.name,
        signs=(one.look(1, HIGH, Sign.FAN),),
        readings=tuple(
            one.read(number, HIGH, point, value)
            for number, point, value in (
                (2, "main-fuse-drop", None), (3, "main-fuse-out", None), (4, "battery", 3.0),
                (5, "relay-drop", 9.0), (6, "motor-feed", None), (7, "main-fuse-in", None),
            )
        ),
    )  # fmt: skip
    whole = one.isolation.verdict(check)
    monkeypatch.setattr(left_out, "_SETS", 1.0)
    cut = one.isolation.verdict(check)
    assert [s.unit for s in cut.suspects[:2]] == [s.unit for s in whole.suspects[:2]]
    assert cut.suspects[0].without_best == pytest.approx(whole.suspects[0].without_best, abs=0.3)
