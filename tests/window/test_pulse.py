"""The pulse beats for whoever asks, from any thread, and no more often than it must."""

import threading

from meterlog.window.pulse import Pulse

NEVER_MS = 3_600_000


def beats(pulse):
    seen = []
    pulse.beat.connect(lambda: seen.append(threading.current_thread()))
    return seen


def test_one_beat_in_the_windows_thread_answers_all_who_asked_before_it(qtbot):
    pulse = Pulse(None, NEVER_MS)
    seen = beats(pulse)
    readers = [threading.Thread(target=lambda: [pulse.wake() for _ in range(50)]) for _ in range(3)]
    for one in readers:
        one.start()
    for one in readers:
        one.join()
    qtbot.waitUntil(lambda: bool(seen), timeout=2000)
    assert len(seen) <= 3  # one, or as many as threads that asked at one moment
    assert set(seen) == {threading.main_thread()}
    many = len(seen)
    pulse.wake()
    qtbot.waitUntil(lambda: len(seen) > many, timeout=2000)


def test_it_beats_by_itself_and_after_the_rest_that_was_asked_for_first(qtbot):
    idle = Pulse(None, 5)
    seen = beats(idle)
    qtbot.waitUntil(lambda: len(seen) >= 3, timeout=2000)
    idle.stop()
    pulse = Pulse(None, NEVER_MS)
    seen = beats(pulse)
    pulse.again_in(0.02)
    pulse.again_in(3600.0)
    qtbot.waitUntil(lambda: bool(seen), timeout=2000)


def test_stopped_it_beats_no_more(qtbot):
    pulse = Pulse(None, 5)
    pulse.again_in(0.005)
    pulse.wake()
    pulse.stop()
    seen = beats(pulse)
    pulse.wake()
    qtbot.wait(60)
    assert seen == []
