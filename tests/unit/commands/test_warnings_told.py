"""What speaks against the meters is said once, and never what is already put right."""

from types import SimpleNamespace

import pytest

from meterlog.commands.warnings_told import WarningsTold
from meterlog.model import Doubt, DoubtKind

MISSING = Doubt(DoubtKind.ZERO_MISSING, "No zero was taken.", 0, 0, "clamp")
BATTERY = Doubt(DoubtKind.BATTERY, "The battery is low.", 0, 0, "clamp")


@pytest.fixture
def loop(monkeypatch, capsys):
    """Tell at a given second what is doubted then; gives what was said."""
    told = WarningsTold()
    progress = SimpleNamespace(done=lambda: None)

    def at(now_s, *doubts, zeroing=False):
        monkeypatch.setattr("meterlog.commands.warnings_told.time.monotonic", lambda: now_s)
        run = SimpleNamespace(review=lambda: SimpleNamespace(doubts=doubts))
        told.tell(run, progress, zeroing=zeroing)
        return capsys.readouterr().err

    return at


def test_each_is_said_once_and_looked_for_once_a_second(loop):
    assert "The battery is low." in loop(10.0, BATTERY)
    assert loop(10.5, MISSING) == ""
    assert "No zero was taken." in loop(11.1, BATTERY, MISSING)
    assert loop(12.2, BATTERY, MISSING) == ""


def test_while_a_zero_is_taken_and_until_it_is_judged_nobody_is_told_that_there_is_none(loop):
    assert loop(10.0, MISSING, zeroing=True) == ""
    assert loop(10.1, MISSING, zeroing=True) == ""
    # Taken, but the judgement has not heard of it yet.
    assert "The battery is low." in loop(11.2, MISSING, BATTERY)
    assert loop(13.0) == ""


def test_a_zero_that_was_refused_is_missing_after_all(loop):
    assert loop(10.0, MISSING, zeroing=True) == ""
    assert "No zero was taken." in loop(16.0, MISSING)
