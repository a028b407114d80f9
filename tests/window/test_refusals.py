"""What can't be done now says why, and what to do instead, in each phase."""

import pytest

from meterlog.window.phase import Phase
from meterlog.window.refusals import no_mark, under_way


@pytest.mark.parametrize(
    ("phase", "marks", "begins"),
    [
        (Phase.IDLE, "Nothing is being recorded: press Enter to start.", "Wait until"),
        (Phase.SHOWING, "Nothing is being recorded: press Enter to start.", "Wait until"),
        (Phase.CONNECTING, "It is not being recorded yet", "Stop the recording first."),
        (Phase.RECORDING, "Nothing is being recorded", "Stop the recording first."),
        (Phase.SEALING, "The recording has ended and is being sealed", "Wait until that is done."),
        (Phase.OPENING, "Nothing is being recorded", "Wait until that is done."),
    ],
)
def test_each_phase_has_its_own_advice(phase, marks, begins):
    assert no_mark(phase).startswith(marks)
    error = under_way(phase)
    assert (error.subject, error.remedy.startswith(begins)) == (phase.value, True)
