"""SealState: what a recording's seal comes to, for all that is written of it."""

from __future__ import annotations

from weakref import WeakKeyDictionary

from meterlog.evidence.check_progress import Tell, nobody
from meterlog.evidence.shown_text import shown
from meterlog.evidence.verify import verify_folder
from meterlog.recording import Recording

_known: WeakKeyDictionary[Recording, tuple[str, ...]] = WeakKeyDictionary()


def seal_problems(recording: Recording, tell: Tell = nobody) -> tuple[str, ...]:
    """Say what is not as it was sealed; looked for once in each recording that is read.

    Parameters
    ----------
    recording : Recording
    tell : callable
        Called with the part of the check that is done, 0 to 1; what it raises ends the check.

    Returns
    -------
    tuple of str
        Empty where it is as sealed, or was never sealed.

    Raises
    ------
    EvidenceError
        If a file can't be read.
    """
    if recording.state == "unsealed":
        return ()
    if recording not in _known:
        _known[recording] = verify_folder(recording.folder, tell).problems
    # Names in it may be a stranger's.
    return tuple(map(shown, _known[recording]))


def seal_words(recording: Recording, tell: Tell = nobody) -> tuple[str, ...]:
    """Say it for a reader, without what the recording's own damage says already.

    Parameters and errors are those of :func:`seal_problems`.
    """
    problems = seal_problems(recording, tell)
    told = {shown(one) for one in recording.damage}
    return tuple(f"NOT AS SEALED: {one}" for one in problems if one not in told)


def seal_state(recording: Recording) -> str:
    """Give the state of a recording in a word or three; one that was changed is not sealed."""
    return "NOT AS SEALED" if seal_problems(recording) else str(recording.state)
