"""FakeRun: a run for the window whose recording is on the disk before it begins."""

from meterlog.acquire import ZeroTaking
from meterlog.model import Event, EventKind, Review
from meterlog.recording import Recorder, seal
from meterlog.work import LiveTail, RunStatus

S = 1_000_000_000


class FakeRun:
    """A run whose recording is on the disk already, sealed, at one speed."""

    def __init__(self, folder, about, block):
        self.about, self.folder, self.tail = about, folder, LiveTail()
        self.now, self.marks = 0, []
        recorder = Recorder.create(folder, about, keep_raw=False)
        recorder.take(Event(2 * S, EventKind.SPEED, "1"))
        recorder.take(block)
        recorder.close()
        seal(folder)
        self.taking = ZeroTaking("line-logger", 2, about.instruments[0].channels[2], 3.0)

    def status(self):
        return RunStatus()

    def review(self):
        return Review()

    def now_ns(self):
        return self.now

    def mark(self, kind, value="", at_ns=None):
        self.marks.append(Event(0 if at_ns is None else at_ns, kind, value))
        return self.marks[-1]

    def take_zero(self, _role):
        return self.taking

    def stop(self, _outcome):
        self.taking.give_up("the recording ended first.")
        return self.folder
