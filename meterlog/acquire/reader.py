"""Reader: one thread that reads one instrument and puts what it says on the bus."""

from __future__ import annotations

import threading
from collections.abc import Callable

from meterlog.acquire.bus import Item
from meterlog.acquire.choice import MeterChoice
from meterlog.acquire.clock import Clock
from meterlog.acquire.condition import Condition, Topic
from meterlog.acquire.line_watch import LineWatch
from meterlog.acquire.link_words import open_again_words, says_more_than_away, silent_words
from meterlog.acquire.rate import RateCheck
from meterlog.acquire.reader_state import ReaderState
from meterlog.acquire.refusals import RefusalReport
from meterlog.acquire.reopening import Reopening
from meterlog.acquire.scaling import Scaling
from meterlog.acquire.silence import SilenceWatch
from meterlog.acquire.talk import Conversation, Heard
from meterlog.acquire.times import Stamped, Stamper, TimingReport, sending, time_uncertainty_s
from meterlog.acquire.zeroing import Zeroing, ZeroTaking
from meterlog.model import Event, EventKind, RawBytes, link_text
from meterlog.model.errors import LinkError, MeterlogError, TalkError

SLICE_S = 0.05
"""A turn of listening lasts so long at most; so long a stop takes."""
MOST_TROUBLES = 16
"""So many different reasons for not being open again are told of one loss."""


class Reader:
    """Reads one instrument until it is stopped, through silence and lost ports.

    Parameters
    ----------
    choice : MeterChoice
    conversation : Conversation
        Already open. The reader closes it at the end.
    clock : Clock
    skew_s : float, seconds
        So much later than others the instrument's times are known to be; subtracted.
    """

    def __init__(
        self,
        choice: MeterChoice,
        conversation: Conversation,
        clock: Clock,
        skew_s: float = 0.0,
    ) -> None:
        channel = choice.channels[0]
        self.key = choice.key
        self._conversation = conversation
        self._clock = clock
        how = sending(choice, conversation.byte_s, skew_s)
        self._stamper = Stamper(how)
        self._timing = TimingReport(self._stamper, time_uncertainty_s(how))
        self._scaling = Scaling(choice.key, choice.channels)
        self._zeroing = Zeroing(choice.key, self._scaling, clock)
        self._interval_s = max(channel.interval_s, choice.profile.pause_s)
        self._silence = SilenceWatch(self._interval_s)
        self._rate = RateCheck(self._interval_s)
        self._refusals = RefusalReport()
        self._stop = threading.Event()
        self._thread: threading.Thread | None = None
        self._put: Callable[[Item], None] = _nowhere
        self._profile = choice.profile
        self._line = LineWatch(choice.profile, conversation)
        self._condition = Condition()
        self._reopening: Reopening | None = None
        self._lost_url = ""
        self._troubles: set[str] = set()
        self._readings = 0
        self._last_ns: int | None = None
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

    def take_zero(self, taking: ZeroTaking) -> bool:
        """Take a zero from the readings to come; False while another is being taken."""
        return self._zeroing.ask(taking)

    def state(self) -> ReaderState:
        """Give one glance at the instrument."""
        running = self._thread is not None and self._thread.is_alive() and not self._failed
        return ReaderState(
            key=self.key,
            alive=running and not self._silence.silent,
            last_ns=self._last_ns,
            readings=self._readings,
            refused=self._conversation.refused,
            message=self._condition.words(self._clock.now_ns()),
            lost=self._line.lost,
            repeated=self._conversation.repeated,
            typed=not self._conversation.watched,
        )

    def _run(self) -> None:
        try:
            while not self._stop.is_set():
                self._turn()
            self._take_last_typed()
            self._keep(self._stamper.gone())
            self._report_refused(last=True)
            for said in self._timing.last() if self._conversation.watched else ():
                self._tell(EventKind.TIMING, said)
        # The top of a thread: an error of the program itself must reach the recording and the
        # screen, since nobody reads what a thread leaves behind.
        except Exception as error:  # noqa: BLE001
            # Before it is told: whoever hears it and looks must not find a reader that is well.
            self._failed = True
            self._say(Topic.STOPPED, f"reading stopped: {error}")
            self._tell(EventKind.FAULT, f"reading stopped: {type(error).__name__}: {error}")
        finally:
            self._zeroing.stop()
            if self._reopening is None:
                self._conversation.close()
            else:
                self._reopening.give_up()

    def _take_last_typed(self) -> None:
        """Keep what was typed right before the end."""
        while not self._conversation.watched:
            heard = self._conversation.hear(0.0)
            if not heard.data:
                return
            self._take(heard)

    def _turn(self) -> None:
        try:
            if self._reopening is None:
                wait_s = self._stamper.wait_s(self._clock.now_ns(), SLICE_S)
                self._take(self._conversation.hear(wait_s))
            else:
                self._look_for_it(self._reopening)
        except (LinkError, TalkError) as error:
            self._lose(error)
        self._watch_silence()
        self._watch_time()
        self._report_refused()
        zeroed = self._zeroing.tick()
        if zeroed is not None:
            self._put(zeroed)

    def _take(self, heard: Heard) -> None:
        if heard.aside:
            self._put(RawBytes(self.key, heard.arrived_ns, heard.aside))
        if heard.data:
            self._put(RawBytes(self.key, heard.arrived_ns, heard.data))
            self._stamper.heard(heard.data)
        self._complain(heard.complaints)
        for topic, words in self._line.check(heard):
            self._tell(EventKind.LINK, words)
            self._say(topic, words)
        count = len(heard.readings)
        if not count:
            for remark in heard.readings.remarks:
                self._tell(remark.kind, remark.text)
            return
        back = self._silence.heard(heard.arrived_ns)
        if back:
            self._tell(EventKind.LINK, back)
            self._timing.was_silent()
        self._condition.clear(Topic.LINK, Topic.SPEED)
        if self._conversation.watched:
            self._check_rate(count, heard.arrived_ns)
        self._keep(self._stamper.take(heard.readings, heard.arrived_ns, heard.asked_ns))

    def _keep(self, stamped: list[Stamped]) -> None:
        """Put what has its time on the bus, in order."""
        for rows in stamped:
            readings, stamps = rows.readings, rows.t_ns
            if readings is None:
                self._put(self._scaling.nothing(stamps))
                continue
            block = self._scaling.block(readings, stamps)
            self._put(block)
            self._zeroing.heard(block)
            self._last_ns = int(stamps[-1])
            self._readings += len(readings)
            for remark in readings.remarks:
                at_ns = int(stamps[min(remark.row, len(readings) - 1)])
                self._put(Event(at_ns, remark.kind, remark.text, self.key))

    def _check_rate(self, count: int, arrived_ns: int) -> None:
        learnt = self._rate.gap_s is not None
        slow = self._rate.arrived(count, arrived_ns)
        if self._rate.gap_s is not None and not learnt:
            # Some adapters save readings up: between two lumps such a meter is not silent.
            self._silence.set_interval(max(self._interval_s, self._rate.gap_s))
        if slow:
            self._tell(EventKind.FAULT, slow)
            self._say(Topic.PACE, slow)

    def _lose(self, error: LinkError | TalkError) -> None:
        self._tell(EventKind.LINK, f"{link_text.LOST}{error.message}")
        self._say(Topic.LINK, f"{link_text.LOST}{error}")
        self._condition.clear(Topic.SPEED, Topic.OTHER_DEVICE)
        self._silence.give_up(self._clock.now_ns())
        self._keep(self._stamper.gone())
        self._stamper.forget_own_clock()
        self._rate.restart()
        self._line.lost_port()
        self._troubles.clear()
        self._lost_url = self._conversation.port.url if self._conversation.port else ""
        self._reopening = Reopening(self._conversation, f"reopening {self.key}")
        self._reopening.begin()

    def _look_for_it(self, reopening: Reopening) -> None:
        """Wait a little for the port to be there again."""
        complaints = reopening.wait(SLICE_S)
        if complaints is None:
            if reopening.trouble is not None:
                self._say(Topic.LINK, f"{link_text.LOST}{reopening.trouble}")
                self._tell_trouble(reopening.trouble)
            return
        self._reopening = None
        self._line.reopened()
        if self._conversation.port is not None:
            self._tell(EventKind.LINK, open_again_words(self._conversation.port, self._lost_url))
        self._say(Topic.LINK, "the port is open again, but no reading has come yet")
        for complaint in complaints:
            self._tell(EventKind.DEVICE, complaint)
            self._say(Topic.OTHER_DEVICE, complaint)

    def _tell_trouble(self, trouble: MeterlogError) -> None:
        """Put into the recording why the port can't be opened, each reason once."""
        known = trouble.message in self._troubles or len(self._troubles) >= MOST_TROUBLES
        if not known and says_more_than_away(trouble):
            self._troubles.add(trouble.message)
            self._tell(EventKind.LINK, f"{link_text.NOT_OPEN}{trouble.message}")

    def _watch_silence(self) -> None:
        if not self._conversation.watched:
            return
        now_ns = self._clock.now_ns()
        silent = self._silence.check(now_ns)
        if silent:
            gap_s = (now_ns - self._silence.heard_ns) / 1e9
            words = silent_words(silent, gap_s, self._profile)
            self._tell(EventKind.LINK, words)
            self._say(Topic.LINK, words)
        if self._silence.row_due(now_ns):
            self._keep(self._stamper.nothing(now_ns))

    def _watch_time(self) -> None:
        now_ns = self._clock.now_ns()
        self._keep(self._stamper.check(now_ns))
        if not self._conversation.watched:
            return  # a hand has no pace to tell of
        for said in self._timing.due(now_ns):
            self._tell(EventKind.TIMING, said)

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
            self._say(Topic.DEVICE, complaint)

    def _say(self, topic: Topic, words: str) -> None:
        self._condition.say(topic, words, self._clock.now_ns())

    def _tell(self, kind: EventKind, value: str) -> None:
        self._put(Event(self._clock.now_ns(), kind, value, self.key))


def _nowhere(_item: Item) -> None:
    """Take what comes before the start: nothing does."""
