"""The suspected units: what speaks most against a likely one is read whole."""

import pytest

from meterlog.model import Suspect, SuspectFault
from meterlog.window.suspects_view import SuspectsView

LONG = SuspectFault("fan motor: dead spot on the commutator", "motor", "open", 0.6)


@pytest.fixture
def view(qtbot):
    view = SuspectsView()
    qtbot.addWidget(view)
    view.show()
    return view


def _lines(view, *suspects, width=300):
    view.show_suspects((), "")
    view.resize(width, 200)
    one = view.sizeHint().height()
    view.show_suspects(suspects, "")
    return round((view.sizeHint().height() - 4) / (one - 4))


def test_a_long_fault_of_a_likely_unit_takes_a_line_of_its_own(view):
    likely = Suspect("motor", "fan motor", 0.62, 0.5, (LONG,))
    assert _lines(view, likely) == 2
    assert _lines(view, likely, width=900) == 1


def test_what_is_hardly_suspected_takes_no_room_of_the_others(view):
    assert _lines(view, Suspect("motor", "fan motor", 0.1, 0.1, (LONG,))) == 1
    assert _lines(view, Suspect("motor", "fan motor", 0.9, 0.9)) == 1
