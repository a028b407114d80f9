"""Figures: where each stands, what states and faults make of them."""

from dataclasses import replace

import numpy as np
import pytest

from meterlog.circuit.figures import (
    CUT_GAIN,
    NEVER_TURNS_A,
    SHORTED_OHM,
    UNPOWERED_OHM,
    healthy_figures,
    index_of,
    set_fault,
    set_state,
)
from meterlog.model import CircuitState
from meterlog.model.circuit import ElementKind, FaultMode
from meterlog.model.element_kinds import KINDS, OPEN_OHM

OWN = {
    "battery": {"emf_v": 12.0, "charging_v": 14.0, "ohm": 0.01},
    "fuse": {"ohm": 0.004, "rating_a": 20.0},
    "contact": {"ohm": 0.008, "pull_in_v": 7.0},
    "motor": {"ohm": 0.2, "no_load_a": 0.7, "fan_a_per_v2": 0.15},
    "transistor": {"gain_a_per_v2": 15.0, "threshold_v": 2.0},
    "regulator": {"ohm": 0.05, "volts_per_volt": 2.0},
    "chopper": {"ohm": 0.03, "start_v": 1.0, "full_v": 5.0},
    "head": {"ohm": 1000.0},
}
SEVERITY = {
    FaultMode.RESISTIVE: 3.0,
    FaultMode.DRAGGING: 4.0,
    FaultMode.FLAT: 9.0,
    FaultMode.STUCK_DRIVE: 5.5,
}
EVERY_FAULT = [(kind, mode) for kind in ElementKind for mode in KINDS[kind].modes]


@pytest.fixture
def all_kinds(element, circuit_of):
    """One element of each kind, named after it, each terminal a node of its own."""
    made = []
    for kind in ElementKind:
        nodes = [f"{kind.value}-{terminal}" for terminal in KINDS[kind].terminals]
        words = {"speeds": {1: 4.0, 2: 8.0}} if kind is ElementKind.HEAD else {}
        figures = OWN.get(kind.value, {"ohm": 0.01})
        made.append(element(kind.value, kind.value, *nodes, **figures, **words))
    return circuit_of(*made)


def changed(circuit, figures, before):
    """Figures that are no longer what they were, by element and figure."""
    index = index_of(circuit)
    return {
        key: figures[0, column]
        for key, column in index.columns.items()
        if figures[0, column] != before[column]
    }


def with_state(circuit, faulty=None, **state):
    index = index_of(circuit)
    before = healthy_figures(circuit, index) if faulty is None else faulty[0]
    return changed(circuit, set_state(circuit, index, before[None], CircuitState(**state)), before)


def broken(circuit, name, mode, severity=None):
    index = index_of(circuit)
    figures = healthy_figures(circuit, index)[None]
    set_fault(index, figures, circuit.element(name), mode, severity)
    return figures


def test_each_figure_has_a_column_of_its_own(all_kinds):
    index = index_of(all_kinds)
    assert sorted(index.columns.values()) == list(range(len(index)))
    assert {figure for owner, figure in index.columns if owner == "battery"} == {
        "emf_v",
        "charging_v",
        "ohm",
    }
    assert set(index.of("chopper")) == {"ohm", "start_v", "full_v", "bypass_ohm"}
    assert set(index.of("head")) >= {"drive_v", "closed_loop", "loop_gain"}
    assert index.of("motor")["no_load_a"] == index["motor", "no_load_a"]
    with pytest.raises(KeyError):
        index["motor", "emf_v"]


def test_healthy_figures_are_the_profile_s_and_else_the_usual(all_kinds):
    index = index_of(all_kinds)
    figures = healthy_figures(all_kinds, index)
    assert figures[index["motor", "fan_a_per_v2"]] == 0.15
    assert figures[index["transistor", "bypass_ohm"]] == OPEN_OHM
    assert figures[index["head", "most_v"]] == 10.0
    louder = replace(all_kinds.element("head"), figures={"ohm": 1.0, "most_v": 5.0})
    others = tuple(e for e in all_kinds.elements if e.name != "head")
    again = replace(all_kinds, elements=(*others, louder))
    index = index_of(again)
    assert healthy_figures(again, index)[index["head", "most_v"]] == 5.0


def test_a_head_is_a_loop_only_with_a_sense_terminal(all_kinds):
    index = index_of(all_kinds)
    assert healthy_figures(all_kinds, index)[index["head", "closed_loop"]] == 1.0
    head = all_kinds.element("head")
    without = replace(all_kinds, elements=(replace(head, nodes=head.nodes[:2]),))
    index = index_of(without)
    assert healthy_figures(without, index)[index["head", "closed_loop"]] == 0.0


WANTED = {
    ("transistor", FaultMode.OPEN): {"gain_a_per_v2": CUT_GAIN},
    ("contact", FaultMode.SHORTED): {"held": 1.0},
    ("battery", FaultMode.FLAT): {"emf_v": 9.0, "charging_v": 9.0},
    ("battery", FaultMode.RESISTIVE): {"ohm": 3.01},
    ("motor", FaultMode.SEIZED): {"no_load_a": NEVER_TURNS_A},
    ("motor", FaultMode.DRAGGING): {"no_load_a": 2.8},
    ("head", FaultMode.NO_DRIVE): {"loop_gain": 0.0, "closed_loop": 0.0},
    ("head", FaultMode.STUCK_DRIVE): {"loop_gain": 0.0, "closed_loop": 0.0, "drive_v": 5.5},
}


@pytest.mark.parametrize(("kind", "mode"), EVERY_FAULT)
def test_a_fault_changes_its_own_figures_and_no_others(all_kinds, kind, mode):
    name = kind.value
    healthy = OWN.get(name, {"ohm": 0.01}).get("ohm", 0.0)
    usual = {
        FaultMode.OPEN: {"ohm": OPEN_OHM},
        FaultMode.RESISTIVE: {"ohm": healthy + 3.0},
        FaultMode.SHORTED: {"bypass_ohm": SHORTED_OHM},
    }
    wanted = WANTED.get((name, mode)) or usual[mode]
    found = changed(
        all_kinds,
        broken(all_kinds, name, mode, SEVERITY.get(mode)),
        healthy_figures(all_kinds, index_of(all_kinds)),
    )
    assert found == pytest.approx({(name, figure): v for figure, v in wanted.items()})


@pytest.mark.parametrize("kind", list(ElementKind))
def test_what_a_kind_can_t_have_is_refused_by_name(all_kinds, kind):
    for mode in set(FaultMode) - set(KINDS[kind].modes):
        with pytest.raises(ValueError, match=f"^{kind.value}: .* can't be '{mode.value}', only: "):
            broken(all_kinds, kind.value, mode, 1.0)


@pytest.mark.parametrize(("kind", "mode"), [fault for fault in EVERY_FAULT if fault[1] in SEVERITY])
def test_a_mode_of_degrees_needs_its_severity(all_kinds, kind, mode):
    with pytest.raises(ValueError, match=f"^{kind.value} {mode.value}: a severity is needed"):
        broken(all_kinds, kind.value, mode)


def test_a_fault_goes_into_the_rows_it_is_told(all_kinds):
    index = index_of(all_kinds)
    figures = np.tile(healthy_figures(all_kinds, index), (5, 1))
    set_fault(index, figures, all_kinds.element("wire"), FaultMode.OPEN, None, slice(1, 2))
    set_fault(index, figures, all_kinds.element("wire"), FaultMode.RESISTIVE, 2.0, np.array([3, 4]))
    np.testing.assert_allclose(figures[:, index["wire", "ohm"]], [0.01, OPEN_OHM, 0.01, 2.01, 2.01])


def test_two_faults_of_two_elements_are_both_there(all_kinds):
    index = index_of(all_kinds)
    figures = broken(all_kinds, "motor", FaultMode.SEIZED)
    set_fault(index, figures, all_kinds.element("fuse"), FaultMode.OPEN, None)
    found = changed(all_kinds, figures, healthy_figures(all_kinds, index))
    assert set(found) == {("motor", "no_load_a"), ("fuse", "ohm")}


def test_a_state_leaves_the_figures_it_is_given_alone(all_kinds):
    index = index_of(all_kinds)
    figures = healthy_figures(all_kinds, index)
    before = figures.copy()
    made = set_state(all_kinds, index, figures, CircuitState("engine", 2))
    assert made.shape == figures.shape
    np.testing.assert_array_equal(figures, before)
    table = set_state(all_kinds, index, np.tile(figures, (3, 1)), CircuitState("engine", 2))
    np.testing.assert_array_equal(table, np.tile(made, (3, 1)))


def test_with_the_engine_on_the_battery_is_charged(all_kinds):
    found = with_state(all_kinds, key="engine", speed=2)
    assert found == {("battery", "emf_v"): 14.0, ("head", "drive_v"): 8.0}


def test_with_the_key_off_the_head_only_pulls_down(all_kinds):
    found = with_state(all_kinds, key="off", speed=2)
    assert found == {("head", "closed_loop"): 0.0, ("head", "ohm"): UNPOWERED_OHM}


@pytest.mark.parametrize(("speed", "asked"), [(1, 4.0), (2, 8.0)])
def test_the_head_asks_for_its_speed(all_kinds, speed, asked):
    assert with_state(all_kinds, key="on", speed=speed) == {("head", "drive_v"): asked}


def test_at_speed_0_the_loop_is_open_and_nothing_is_asked_for(all_kinds):
    assert with_state(all_kinds, key="on", speed=0) == {("head", "closed_loop"): 0.0}


@pytest.mark.parametrize("speed", [0, 1, 2])
def test_a_stuck_head_asks_for_the_same_at_every_speed(all_kinds, speed):
    stuck = broken(all_kinds, "head", FaultMode.STUCK_DRIVE, 5.5)
    assert with_state(all_kinds, stuck, key="on", speed=speed) == {}
    silent = broken(all_kinds, "head", FaultMode.NO_DRIVE)
    assert with_state(all_kinds, silent, key="on", speed=speed) == {}


def test_without_supply_a_stuck_head_asks_for_nothing(all_kinds):
    stuck = broken(all_kinds, "head", FaultMode.STUCK_DRIVE, 5.5)
    found = with_state(all_kinds, stuck, key="off", speed=1)
    assert found[("head", "drive_v")] == 0.0


def test_a_plug_that_is_off_opens_all_that_is_in_it(element, circuit_of):
    circuit = circuit_of(
        element("feed-pin", "connection", "a", "b", ohm=0.01, plug="motor"),
        element("return-pin", "connection", "c", "minus", ohm=0.01, plug="motor"),
        element("other-pin", "connection", "c", "d", ohm=0.01, plug="head"),
    )
    found = with_state(circuit, unplugged=frozenset(["motor"]))
    assert found == {("feed-pin", "ohm"): OPEN_OHM, ("return-pin", "ohm"): OPEN_OHM}


def test_a_fuse_that_is_out_is_open_even_if_it_was_resistive(all_kinds):
    worn = broken(all_kinds, "fuse", FaultMode.RESISTIVE, 3.0)
    found = with_state(all_kinds, worn, pulled=frozenset(["fuse"]))
    assert found == {("fuse", "ohm"): OPEN_OHM, ("head", "closed_loop"): 0.0}


@pytest.mark.parametrize(
    ("keys", "speeds", "key", "speed", "closed"),
    [
        ((), (), "off", 0, True),
        (("on", "engine"), (), "on", 0, True),
        (("on", "engine"), (), "off", 2, False),
        ((), (1, 2), "off", 1, True),
        ((), (1, 2), "on", 0, False),
        (("on",), (2,), "on", 2, True),
        (("on",), (2,), "engine", 2, False),
        (("on",), (2,), "on", 1, False),
    ],
)
def test_a_switch_is_closed_by_key_and_speed(element, circuit_of, keys, speeds, key, speed, closed):
    switch = element(
        "switch", "switch", "a", "minus", ohm=0.01, closed_keys=keys, closed_speeds=speeds
    )
    found = with_state(circuit_of(switch), key=key, speed=speed)
    assert found == ({} if closed else {("switch", "ohm"): OPEN_OHM})
