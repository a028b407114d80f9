"""Settings shared by all tests, and the order in which several workers take them."""

import gc
import os
from itertools import count, groupby

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ.setdefault("TZ", "UTC")

import pytest
from hypothesis import HealthCheck, settings

# The same cases each time, so that what fails is what was changed; new ones with `make fuzz`.
settings.register_profile(
    "house",
    deadline=None,
    derandomize="METERLOG_NEW_CASES" not in os.environ,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture],
    print_blob=True,
)
settings.load_profile("house")


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
    if gc.isenabled():
        return
    is_window = "tests/window/" in request.node.nodeid
    if not is_window or next(_windows) % 25 == 0:  # a window is 16 MB
        gc.collect()
    if not is_window:
        gc.enable()


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
