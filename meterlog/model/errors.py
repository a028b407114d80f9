"""What can go wrong, as one tree.

::

    MeterlogError                    text for a person, ``subject`` (port, file), ``remedy``
      UsageError                     the command or the request itself is wrong        exit code 2
      LinkError                      LinkNotFound · LinkBusy · LinkRefused · LinkLost
      TalkError                      the instrument answers, but not as its profile says
      ProfileError                   file, key, what was expected
      RecordingError                 RecordingExists · RecordingUnreadable · DiskFailed
      TraceError                     a trace or events file that can't be imported
      EvidenceError                  an export or a seal that can't be made

Each error says what happened, to which thing, and what to do next. Foreign errors are translated
where they come in (pyserial in ``instruments/serial_link.py``, OSError in ``recording/`` and
``evidence/``, TOML in ``profile/``), with the cause kept by ``raise ... from``.
"""

from __future__ import annotations

from meterlog.model.visible_text import one_line, steerless

_LONGEST = 1200
"""Letters of each part: errors quote what files say, and a file may say a megabyte."""


def told(text: str) -> str:
    """Give text as a message may show it: cut in its middle, without what steers a terminal."""
    shown = steerless(text)
    half = _LONGEST // 2
    return shown if len(shown) <= _LONGEST else f"{shown[:half]} ... {shown[-half:]}"


class MeterlogError(Exception):
    """Base of all errors meant for a person.

    Parameters
    ----------
    message : str
        What happened, in plain words.
    subject : str
        The port, file, profile or key concerned; empty when there is none.
    remedy : str
        What to do next; empty when nothing can be done.
    """

    def __init__(self, message: str, *, subject: str = "", remedy: str = "") -> None:
        self.message = told(message)
        super().__init__(self.message)
        self.subject = told(one_line(subject))
        self.remedy = told(remedy)

    def __str__(self) -> str:
        """One paragraph: subject, message, remedy."""
        lead = f"{self.subject}: " if self.subject else ""
        ends = "" if self.message.endswith((".", "!", "?", "…", ":", ")")) else "."
        tail = f"{ends} {self.remedy}" if self.remedy else ""
        return f"{lead}{self.message}{tail}"


class UsageError(MeterlogError):
    """The request is wrong: an unknown name, a missing or contradictory option."""


class LinkError(MeterlogError):
    """A port could not be opened or used."""


class LinkNotFound(LinkError):
    """There is no such port."""


class LinkBusy(LinkError):
    """Another program holds the port."""


class LinkRefused(LinkError):
    """The system does not let this user open the port, or the far side refuses."""


class LinkLost(LinkError):
    """The port was open and went away."""


class TalkError(MeterlogError):
    """The instrument answers, but not as its profile says."""


class ProfileError(MeterlogError):
    """A profile can't be used: missing file, bad TOML, wrong key, type or value."""


class RecordingError(MeterlogError):
    """A recording can't be written or read."""


class RecordingExists(RecordingError):
    """The folder is already there and is not empty."""


class RecordingUnreadable(RecordingError):
    """The folder holds no recording, or one that is damaged beyond use."""


class DiskFailed(RecordingError):
    """The disk did not take what was given: full, gone, read-only or a short write."""


class TraceError(MeterlogError):
    """A trace or events file can't be imported; names file, line and column."""


class EvidenceError(MeterlogError):
    """An export, a seal or a check of one can't be done."""
