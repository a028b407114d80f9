"""Works for a process of their own: it can take only functions of a module that can be found."""

import os
import tempfile
import time
from pathlib import Path

from meterlog.model.errors import UsageError
from meterlog.window.claim_page import claim_plan

_SLICE_S = 0.01


def add(one, other, progress):
    """Tell half, then give the sum and the process that made it."""
    progress(0.5)
    time.sleep(0.1)
    progress(1.0)
    return one + other, os.getpid()


def hold_the_interpreter(progress):
    """Let no other thread run for a good while, in one call."""
    progress(0.0)
    return sum(range(20_000_000))


def refuse(progress):
    progress(0.0)
    raise UsageError("is no pack.", subject="--key", remedy="Leave --key out, or give the pack.")


def fail(progress):
    progress(0.0)
    raise ZeroDivisionError("a fault")


def break_off(progress):
    progress(0.0)
    os._exit(7)


def fill_a_folder(place, asks, progress):
    """Hold a folder with something half made until it is cancelled; asks whether it is, or not."""
    with tempfile.TemporaryDirectory(dir=place) as folder:
        (Path(folder) / "half").touch()
        while True:
            time.sleep(_SLICE_S)
            if asks:
                progress(0.1)


def make_when_told(plan, progress):
    """Make a pack once there is a file ``go-on`` beside the job."""
    (plan.job.parent / "under-way").touch()
    while not (plan.job.parent / "go-on").exists():
        time.sleep(_SLICE_S)
    progress(0.1)
    return claim_plan.make(plan, progress)
