import pytest

from meterlog.instruments.virtual.loose_contact import (
    LooseContact,
    LooseContactFigures,
    TapEffect,
)
from meterlog.instruments.virtual.scenario import dice


def contact(**figures):
    return LooseContact(LooseContactFigures(**figures), dice("test", 1, 1))


def until(loose, *, is_open, carrying=True, most=10_000):
    for count in range(1, most):
        if loose.go_on(0.01, carrying=carrying) is is_open:
            return count * 0.01
    return None


def test_it_opens_after_the_time_it_holds_and_closes_after_the_time_it_stays_open():
    loose = contact(holds_s=(2.0, 3.0), opens_s=(0.5, 0.6))
    assert 2.0 <= until(loose, is_open=True) <= 3.02
    assert 0.48 <= until(loose, is_open=False) <= 0.62


def test_an_idle_contact_does_not_open():
    assert until(contact(holds_s=(1.0, 1.0)), is_open=True, carrying=False) is None


def test_without_an_opening_time_only_a_tap_closes_it():
    loose = contact(holds_s=(1.0, 1.0), tap=TapEffect.CLOSES)
    until(loose, is_open=True)
    assert until(loose, is_open=False) is None
    loose.tap()
    assert not loose.is_open
    assert until(loose, is_open=True) == pytest.approx(1.0, abs=0.02)


def test_a_tap_opens_a_loose_plug_for_its_opening_time():
    loose = contact(holds_s=(50.0, 50.0), opens_s=(0.4, 0.5), tap=TapEffect.OPENS)
    loose.tap()
    assert loose.is_open
    assert 0.38 <= until(loose, is_open=False) <= 0.52


def test_a_tap_does_nothing_to_a_broken_wire():
    loose = contact(holds_s=(1.0, 1.0))
    loose.tap()
    assert not loose.is_open
    until(loose, is_open=True)
    loose.tap()
    assert loose.is_open
