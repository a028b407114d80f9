"""The bus: order, nothing lost, ticks under load, one bad sink does not stop the others."""

import threading
import time

from meterlog.acquire import NO_HURRY_NS, Bus, Clock
from meterlog.model import Event, EventKind


class Keeper:
    """Keeps what it takes, and when it was ticked."""

    def __init__(self, slow_s: float = 0.0, every_ns: int = NO_HURRY_NS) -> None:
        self._every_ns = every_ns
        self.taken: list[Event] = []
        self.ticks: list[int] = []
        self.threads: set[str] = set()
        self._slow_s = slow_s

    def take(self, item) -> None:
        self.taken.append(item)
        self.threads.add(threading.current_thread().name)
        if self._slow_s:
            threading.Event().wait(self._slow_s)

    def tick(self, now_ns: int) -> None:
        self.ticks.append(now_ns)

    def rest_ns(self, now_ns: int) -> int:
        return self.ticks[-1] + self._every_ns - now_ns if self.ticks else self._every_ns


class Broken(Keeper):
    """Fails at everything."""

    def take(self, item) -> None:
        super().take(item)
        raise OSError("disk gone" if len(self.taken) % 2 else "disk full")

    def tick(self, now_ns: int) -> None:
        raise ValueError("no time")


def event(number: int) -> Event:
    return Event(number, EventKind.NOTE, str(number))


def test_every_sink_takes_everything_in_order_and_stop_drains_first():
    first, second = Keeper(slow_s=0.0005), Keeper()
    bus = Bus([first, second], Clock.start())
    bus.put(event(0))
    bus.start()
    for number in range(1, 300):
        bus.put(event(number))
    bus.stop()
    assert [item.t_ns for item in first.taken] == list(range(300))
    assert first.taken == second.taken
    assert first.threads == {"bus"}
    assert bus.waiting == 0
    assert bus.faults == ()


def test_items_of_several_threads_all_arrive_each_threads_in_order():
    keeper = Keeper()
    bus = Bus([keeper], Clock.start())
    bus.start()

    def put(first: int) -> None:
        for number in range(first, first + 1000):
            bus.put(event(number))

    threads = [threading.Thread(target=put, args=(1000 * place,)) for place in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    bus.stop()
    numbers = [item.t_ns for item in keeper.taken]
    assert sorted(numbers) == list(range(4000))
    for place in range(4):
        mine = [number for number in numbers if number // 1000 == place]
        assert mine == sorted(mine)


def test_ticks_go_on_while_there_is_nothing_to_take_and_under_load():
    for load in (False, True):
        keeper = Keeper(slow_s=0.001 if load else 0.0, every_ns=20_000_000)
        bus = Bus([keeper], Clock.start())
        for number in range(250 if load else 0):
            bus.put(event(number))
        bus.start()
        until = time.monotonic() + 60.0
        while len(keeper.ticks) < 8 and time.monotonic() < until:
            threading.Event().wait(0.005)
        bus.stop()
        steps = sorted(
            later - sooner for sooner, later in zip(keeper.ticks, keeper.ticks[1:], strict=False)
        )
        assert len(keeper.ticks) >= 8
        assert steps[len(steps) // 2] <= 25_000_000


def test_who_waits_for_nothing_is_not_woken_more_than_some_times_a_second():
    keeper = Keeper(every_ns=10 * NO_HURRY_NS)
    bus = Bus([keeper], Clock.start())
    bus.start()
    until = time.monotonic() + 60.0
    while len(keeper.ticks) < 4 and time.monotonic() < until:
        threading.Event().wait(0.005)
    bus.stop()
    steps = [
        later - sooner for sooner, later in zip(keeper.ticks, keeper.ticks[1:-1], strict=False)
    ]
    assert len(keeper.ticks) >= 4
    assert min(steps) >= NO_HURRY_NS


def test_a_sink_that_is_never_content_leaves_the_processor_to_others():
    keeper = Keeper(every_ns=0)
    bus = Bus([keeper], Clock.start())
    bus.start()
    threading.Event().wait(0.2)
    bus.stop()
    steps = [
        later - sooner for sooner, later in zip(keeper.ticks, keeper.ticks[1:-1], strict=False)
    ]
    assert steps
    assert min(steps) >= 4_900_000


def test_a_last_tick_comes_after_the_last_item():
    keeper = Keeper()
    clock = Clock.start()
    bus = Bus([keeper], clock)
    bus.start()
    bus.put(event(1))
    before_ns = clock.now_ns()
    bus.stop()
    assert keeper.ticks[-1] >= before_ns


def test_a_sink_that_raises_is_recorded_once_a_message_and_the_others_go_on():
    broken, keeper = Broken(), Keeper()
    bus = Bus([broken, keeper], Clock.start())
    bus.start()
    for number in range(6):
        bus.put(event(number))
    bus.stop()
    assert len(broken.taken) == len(keeper.taken) == 6
    assert keeper.ticks
    assert set(bus.faults) == {
        "Broken: OSError: disk gone",
        "Broken: OSError: disk full",
        "Broken: ValueError: no time",
    }
    assert len(bus.faults) == 3


def test_stopping_twice_or_before_the_start_does_no_harm():
    bus = Bus([Keeper()], Clock.start())
    bus.stop()
    bus.start()
    bus.stop()
    bus.stop()
