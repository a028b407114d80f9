"""Everything that may be wrong, with its share of the prior."""

from dataclasses import replace

import pytest

from meterlog.circuit.hypotheses import hypotheses_of, severity_bounds
from meterlog.model.circuit import FaultMode


def _by_words(circuit):
    return {item.words: item for item in hypotheses_of(circuit)}


def test_the_priors_sum_up_to_one_in_proportion_to_the_odds(small):
    found = hypotheses_of(small)
    assert sum(item.prior for item in found) == pytest.approx(1.0, abs=1e-12)
    by_words = _by_words(small)
    assert by_words["fuse open"].prior / by_words["nothing electrical"].prior == pytest.approx(10.0)


def test_nothing_stands_first_and_has_no_units(small):
    first = hypotheses_of(small)[0]
    assert (first.units, first.faults, first.words) == (frozenset(), (), "nothing electrical")


def test_a_fault_that_comes_and_goes_shares_its_odds_with_the_one_that_stays(small):
    by_words = _by_words(small)
    stays = by_words["motor: dead spot or worn brushes"]
    goes = by_words["motor: dead spot or worn brushes (comes and goes)"]
    assert goes.comes_and_goes
    assert not stays.comes_and_goes
    assert goes.prior / stays.prior == pytest.approx(0.7 / 0.3)
    assert goes.faults == stays.faults


def test_elements_of_one_unit_blame_the_same_unit(small):
    by_words = _by_words(small)
    assert by_words["coil open"].units == by_words["contact does not close"].units == {"relay"}


def test_pairs_blame_both_units_and_use_the_words_of_the_profile(small):
    by_words = _by_words(small)
    assert by_words["a hot plug"].units == {"motor", "plug"}
    both = by_words["motor seized and fuse open"]
    assert both.units == {"motor", "fuse"}
    assert both.stiff == pytest.approx(1.0 - 0.05 * 0.98)


def test_a_pair_of_a_fault_that_is_not_there_is_refused(small):
    pair = replace(
        small.pairs[0], faults=(("motor", FaultMode.SEIZED), ("fuse", FaultMode.RESISTIVE))
    )
    with pytest.raises(ValueError, match="fuse has no fault 'resistive'"):
        hypotheses_of(replace(small, pairs=(pair,)))


def test_a_severity_without_bounds_is_refused(small):
    motor = small.element("motor")
    unbound = replace(motor, faults=tuple(replace(fault, least=None) for fault in motor.faults))
    elements = tuple(unbound if e is motor else e for e in small.elements)
    with pytest.raises(ValueError, match="motor dragging needs 'least'"):
        severity_bounds(replace(small, elements=elements), "motor", FaultMode.DRAGGING)


def test_no_odds_at_all_are_refused(small):
    elements = tuple(replace(e, faults=()) for e in small.elements)
    with pytest.raises(ValueError, match="no fault has any odds"):
        hypotheses_of(replace(small, elements=elements, pairs=(), no_fault_odds=0.0))
