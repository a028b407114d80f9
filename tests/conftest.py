"""Settings shared by all tests, and the order in which several workers take them."""

import gc
import os
import sys
from itertools import count, groupby
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ.setdefault("TZ", "UTC")

import pytest
from hypothesis import HealthCheck, settings
from PySide6.QtCore import QCoreApplication, QEvent
from pytestqt.qtbot import QtBot

RIG = str(Path(__file__).resolve().parent / "rig")
sys.path.insert(0, RIG)
try:
    import calm
    from shared_room import shared_room
finally:
    sys.path.remove(RIG)

# The same cases each time, so that what fails is what was changed; new ones with `make fuzz`.
settings.register_profile(
    "house",
    deadline=None,
    derandomize="METERLOG_NEW_CASES" not in os.environ,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture],
    print_blob=True,
)
settings.load_profile("house")


_wait_until = QtBot.waitUntil


def _patiently(self, callback, *, timeout=0):
    """Wait two minutes at least: what is true at last is no fault, however busy the machine is."""
    return _wait_until(self, callback, timeout=max(timeout, 120_000))


QtBot.waitUntil = _patiently


@pytest.fixture(scope="session", autouse=True)
def one_application(qapp):
    """Start with the application that windows need: a picture would else make a lesser one."""
    return qapp


_windows = count(1)


@pytest.fixture(autouse=True)
def nothing_left_to_sweep(request):
    """Sweep up behind tests of windows, which do it themselves only now and then.

    No thread of another test may come upon a window that was closed: that locks up Qt.
    """
    # pytest-qt asks for widgets to be deleted, which only the application's own loop would do: all
    # stayed to the end, 16 MB each, and each took part in every change of style.
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    if "tests/window/" in request.node.nodeid:
        if next(_windows) % 10 == 0:
            gc.collect()
    elif not gc.isenabled():
        gc.collect()
        gc.enable()


@pytest.hookimpl(wrapper=True)
def pytest_collection():
    """Let sweeps pass by what the tests themselves are made of, half a million objects.

    Windows are swept up behind 170 times, which took a quarter of a second and more each time.
    """
    gc.disable()
    try:
        return (yield)
    finally:
        gc.collect()
        gc.freeze()
        gc.enable()


@pytest.fixture(scope="session")
def room_of_workers(request, tmp_path_factory):
    """Give what the workers share; nothing where there is but one."""
    several = hasattr(request.config, "workerinput")
    with shared_room(tmp_path_factory.getbasetemp().parent if several else None) as room:
        yield room


@pytest.fixture(autouse=True)
def alone_where_it_matters(request, room_of_workers):
    """Let tests that watch how long something takes run while no other does."""
    if room_of_workers is None:
        yield
        return
    room_of_workers.enter(alone=request.node.nodeid.startswith(ALONE))
    yield
    room_of_workers.leave()


def pytest_pyfunc_call(pyfuncitem):
    """Play what is marked calm(most_s) again where it failed and the machine had stalled.

    Beside no other test, then: these are most of what makes it stall.
    """
    mark = pyfuncitem.get_closest_marker("calm")
    if mark is None:
        return None
    names = pyfuncitem._fixtureinfo.argnames
    given = {name: pyfuncitem.funcargs[name] for name in names}
    room = pyfuncitem._request.getfixturevalue("room_of_workers")

    def told(stall_s):
        pyfuncitem.user_properties.append(("played again", f"{stall_s * 1e3:.0f} ms"))
        if room is not None:
            room.leave()
            room.enter(alone=True)

    calm.play(lambda: pyfuncitem.obj(**given), *mark.args, told)
    return True


def pytest_terminal_summary(terminalreporter):
    """Say which scenes were played again: one that always is has something to it."""
    for report in terminalreporter.getreports("passed") + terminalreporter.getreports("failed"):
        again = [stall for name, stall in report.user_properties if name == "played again"]
        if again and report.when == "call":
            line = f"played again, the machine having stalled {', '.join(again)}: {report.nodeid}"
            terminalreporter.write_line(line)


ALONE = (
    "tests/window/test_paint_loop.py",
    "tests/window/recordings_page/test_paint_loop_goes_on.py",
    "tests/unit/instruments/test_port_memory.py",
)
"""What watches how long the window's thread is held up, or wants a terminal's name for itself."""
WAITING = ("tests/integration/", "tests/jobs/", "tests/window/")
"""What waits for real ports, processes and windows more than it computes."""


def _spread(waiting, computing):
    """Lay files that wait evenly among those that compute, the last ones before the end."""
    places = [(0.85 * n / len(waiting), one) for n, one in enumerate(waiting)]
    places += [(n / len(computing), one) for n, one in enumerate(computing)]
    return [one for _, one in sorted(places, key=lambda place: place[0])]


def pytest_collection_modifyitems(config, items):
    """Let a worker that waits leave its core to one that computes; files stay whole."""
    if not hasattr(config, "workerinput"):
        return  # alone: in the order of the folders
    files = [list(tests) for _, tests in groupby(items, key=lambda item: item.path)]
    waits = [tests[0].nodeid.startswith(WAITING) for tests in files]
    waiting = [tests for tests, wait in zip(files, waits, strict=True) if wait]
    computing = [tests for tests, wait in zip(files, waits, strict=True) if not wait]
    items[:] = [item for tests in _spread(waiting, computing) for item in tests]
