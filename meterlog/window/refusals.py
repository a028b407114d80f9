"""Refusals: why something can't be done in the phase there is, and what to do instead."""

from __future__ import annotations

from meterlog.model.errors import UsageError
from meterlog.window.phase import Phase
from meterlog.window.words import later, say

_NOT_RECORDING = later("Nothing is being recorded: press Enter to start.")
_NOT_YET = later("It is not being recorded yet: wait until the meters are connected.")
_NO_MORE = later("The recording has ended and is being sealed: nothing more goes into it.")


def no_mark(phase: Phase) -> str:
    """Say why nothing can be put into a recording now."""
    if phase is Phase.CONNECTING:
        return say(_NOT_YET)
    return say(_NO_MORE if phase is Phase.SEALING else _NOT_RECORDING)


def under_way(phase: Phase) -> UsageError:
    """Give the error of whoever begins something while something else is under way."""
    stop = phase in {Phase.CONNECTING, Phase.RECORDING}
    return UsageError(
        say("something is under way already."),
        subject=say(phase.value),
        remedy=say("Stop the recording first.") if stop else say("Wait until that is done."),
    )
