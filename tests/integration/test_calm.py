"""A scene in real time is played again where the machine stalled in it, and only there."""

from contextlib import contextmanager

import calm
import pytest


class _Watch:
    """Says that the machine stalled for so long."""

    def __init__(self, worst_s):
        self.worst_s = worst_s

    def __enter__(self):
        return self

    def __exit__(self, *_):
        pass


def _scene(fails):
    """Give a scene that fails so many times, and how often it was played."""
    played = []

    def scene():
        played.append(None)
        assert len(played) > fails

    return scene, played


@pytest.mark.parametrize(("fails", "times"), [(0, 1), (1, 2), (3, 4)])
def test_it_is_played_until_it_holds_where_the_machine_stalls(monkeypatch, fails, times):
    monkeypatch.setattr(calm, "StallWatch", lambda: _Watch(0.5))
    scene, played = _scene(fails)
    stalls = []
    calm.play(scene, 0.01, stalls.append)
    assert len(played) == times
    assert stalls == [0.5] * fails


def test_what_fails_on_a_calm_machine_fails_at_once(monkeypatch):
    monkeypatch.setattr(calm, "StallWatch", lambda: _Watch(0.005))
    scene, played = _scene(1)
    with pytest.raises(AssertionError):
        calm.play(scene, 0.01)
    assert len(played) == 1


def test_what_always_fails_fails_at_last_however_the_machine_stalls(monkeypatch):
    monkeypatch.setattr(calm, "StallWatch", lambda: _Watch(0.5))
    scene, played = _scene(1_000)
    with pytest.raises(AssertionError):
        calm.play(scene, 0.01)
    assert 2 < len(played) < 10


class _Room:
    """Counts how often somebody wanted to be alone in it."""

    def __init__(self):
        self.times = 0

    @contextmanager
    def alone(self):
        self.times += 1
        yield


@pytest.mark.parametrize(("stalls", "times"), [(0, 1), (1, 2), (9, 3)])
@pytest.mark.parametrize("shared", [True, False])
def test_what_is_looked_at_is_made_again_where_the_machine_stalls(
    monkeypatch, stalls, times, shared
):
    made, room = [], _Room()
    monkeypatch.setattr(calm, "StallWatch", lambda: _Watch(0.5 if len(made) < stalls else 0.0))

    def make():
        return made.append(None) or len(made)

    assert calm.calmest(make, 0.01, room if shared else None) == times
    # The first beside others: most often that does.
    assert room.times == (times - 1 if shared else 0)


def test_the_watch_sees_a_thread_that_lets_no_other_run():
    with calm.StallWatch() as watch:
        sum(range(8_000_000))  # one call: no other thread runs meanwhile
    assert watch.worst_s > 0.02
