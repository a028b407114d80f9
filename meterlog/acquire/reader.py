"""Reader: one thread that reads one instrument and puts what it says on the bus."""

from __future__ import annotations

import threading
from collections.abc import Callable

from meterlog.acquire.bus import Item
from meterlog.acquire.choice import MeterChoice
from meterlog.acquire.clock import Clock
from meterlog.acquire.conversation import Conversation, Heard
from meterlog.acquire.rate import RateCheck
from meterlog.acquire.reader_state import ReaderState
from meterlog.acquire.refusals import RefusalReport
from meterlog.acquire.scaling import Scaling
from meterlog.acquire.silence import SilenceWatch
from meterlog.acquire.stamping import Stamper
from meterlog.model import Event, EventKind, RawBytes
from meterlog.model.errors import LinkError, TalkError

SLICE_S = 0.05
"""A turn of listening lasts so long at most; so long a stop takes."""
RETRY_NS = 500_000_000


class Reader:
    """Reads one instrument until it is stopped, through silence and lost ports.

    Parameters
    ----------
    choice : MeterChoice
    conversation : Conversation
        Already open. The reader closes it at the end.
    clock : Clock
    """

    def __init__(self, choice: MeterChoice, conversation: Conversation, clock: Clock) -> None:
        channel = choice.channels[0]
        self.key = choice.key
        self._conversation = conversation
        self._clock = clock
        self._stamper = Stamper(channel.interval_s, channel.integration_s)
        self._scaling = Scaling(choice.key, choice.channels)
        self._interval_s = max(channel.interval_s, choice.profile.pause_s)
        self._silence = SilenceWatch(self._interval_s)
        self._rate = RateCheck(self._interval_s)
        self._refusals = RefusalReport()
        self._stop = threading.Event()
        self._thread: threading.Thread | None = None
        self._put: Callable[[Item], None] = _nowhere
        self._retry_ns: int | None = None
        self._readings = 0
        self._last_ns: int | None = None
        self._message = ""
        self._failed = False

    def start(self, put: Callable[[Item], None], complaints: tuple[str, ...] = ()) -> None:
        """Start the thread.

        Parameters
        ----------
        put : callable
            Takes Blocks, Events and RawBytes; called on the reader's thread.
        complaints : tuple of str
            What the instrument reported while it was set up.
        """
        self._put = put
        self._silence.begin(self._clock.now_ns())
        self._complain(complaints)
        self._thread = threading.Thread(target=self._run, name=f"reader {self.key}")
        self._thread.start()

    def ask_to_stop(self) -> None:
        """Let the thread end soon, without waiting for it."""
        self._stop.set()

    def join(self) -> None:
        """Wait until the thread has ended and the port is closed."""
        if self._thread is not None:
            self._thread.join()

    def state(self) -> ReaderState:
        """Give one glance at the instrument."""
        running = self._thread is not None and self._thread.is_alive() and not self._failed
        return ReaderState(
            key=self.key,
            alive=running and not self._silence.silent,
            last_ns=self._last_ns,
            readings=self._readings,
            refused=self._conversation.refused,
            message=self._message,
        )

    def _run(self) -> None:
        try:
            while not self._stop.is_set():
                self._turn()
            self._report_refused(last=True)
        # The top of a thread: an error of the program itself must reach the recording and the
        # screen, since nobody reads what a thread leaves behind.
        except Exception as error:  # noqa: BLE001
            # Before it is told: whoever hears it and looks must not find a reader that is well.
            self._failed = True
            self._message = f"reading stopped: {error}"
            self._tell(EventKind.FAULT, f"reading stopped: {type(error).__name__}: {error}")
        finally:
            self._conversation.close()

    def _turn(self) -> None:
        try:
            if self._retry_ns is None:
                self._take(self._conversation.hear(SLICE_S))
            else:
                self._try_again(self._retry_ns)
        except (LinkError, TalkError) as error:
            self._lose(error)
        self._watch_silence()
        self._report_refused()

    def _take(self, heard: Heard) -> None:
        if heard.data:
            self._put(RawBytes(self.key, heard.arrived_ns, heard.data))
        self._complain(heard.complaints)
        count = len(heard.readings)
        if not count:
            return
        back = self._silence.heard(heard.arrived_ns)
        if back:
            self._tell(EventKind.LINK, back)
            self._message = ""
        self._check_rate(count, heard.arrived_ns)
        stamps = self._stamper.stamp(heard.readings, heard.arrived_ns, heard.asked_ns)
        self._put(self._scaling.block(heard.readings, stamps))
        self._last_ns = int(stamps[-1])
        self._readings += count
        for remark in heard.readings.remarks:
            at_ns = int(stamps[min(remark.row, count - 1)])
            self._put(Event(at_ns, remark.kind, remark.text, self.key))

    def _check_rate(self, count: int, arrived_ns: int) -> None:
        learnt = self._rate.gap_s is not None
        slow = self._rate.arrived(count, arrived_ns)
        if self._rate.gap_s is not None and not learnt:
            # Some adapters save readings up: between two lumps such a meter is not silent.
            self._silence.set_interval(max(self._interval_s, self._rate.gap_s))
        if slow:
            self._tell(EventKind.FAULT, slow)
            self._message = slow

    def _lose(self, error: LinkError | TalkError) -> None:
        now_ns = self._clock.now_ns()
        if self._retry_ns is None:
            self._tell(EventKind.LINK, f"lost: {error.message}")
            self._silence.give_up(now_ns)
            self._stamper.forget_own_clock()
            self._rate.restart()
        self._message = f"lost: {error}"
        self._retry_ns = now_ns + RETRY_NS

    def _try_again(self, at_ns: int) -> None:
        if self._clock.now_ns() < at_ns:
            self._stop.wait(SLICE_S)
            return
        complaints = self._conversation.reopen()
        self._retry_ns = None
        self._complain(complaints)

    def _watch_silence(self) -> None:
        now_ns = self._clock.now_ns()
        silent = self._silence.check(now_ns)
        if silent:
            self._tell(EventKind.LINK, silent)
            self._message = silent
        if self._silence.row_due(now_ns):
            self._put(self._scaling.nothing(self._stamper.stamp_now(now_ns)))

    def _report_refused(self, *, last: bool = False) -> None:
        talk = self._conversation
        said = self._refusals.check(
            talk.refused, talk.last_refused, self._clock.now_ns(), last=last
        )
        if said:
            self._tell(EventKind.REFUSED, said)

    def _complain(self, complaints: tuple[str, ...]) -> None:
        for complaint in complaints:
            self._tell(EventKind.DEVICE, complaint)
            self._message = complaint

    def _tell(self, kind: EventKind, value: str) -> None:
        self._put(Event(self._clock.now_ns(), kind, value, self.key))


def _nowhere(_item: Item) -> None:
    """Take what comes before the start: nothing does."""
