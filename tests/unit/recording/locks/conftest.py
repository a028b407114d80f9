"""A folder that all users share, and work that another user does there."""

import json
import os
import shutil
import tempfile
from pathlib import Path

import pytest

_ANOTHER = 1234


@pytest.fixture
def shared():
    """A folder in which everybody may do everything."""
    folder = Path(tempfile.mkdtemp(prefix="meterlog-shared-"))
    folder.chmod(0o777)
    yield folder
    shutil.rmtree(folder, ignore_errors=True)


@pytest.fixture
def as_another_user():
    """Do some work in a process of another user, and give what it gives or what it raises."""
    if not hasattr(os, "geteuid") or os.geteuid() != 0:
        pytest.skip("only the administrator can act for another user")

    def act(work):
        read, write = os.pipe()
        child = os.fork()
        if child == 0:
            try:
                os.setgroups([])
                os.setgid(_ANOTHER)
                os.setuid(_ANOTHER)
                told = work()
            except Exception as error:  # noqa: BLE001 - all of it is for the test to judge
                told = f"{type(error).__name__}: {error}"
            os.write(write, json.dumps(told).encode())
            os._exit(0)
        os.close(write)
        with os.fdopen(read) as answer:
            told = json.load(answer)
        os.waitpid(child, 0)
        return told

    return act


def open_to_all(folder):
    """Let everybody write in a recording's folders, as an open mask does."""
    for place in (folder, folder / "data"):
        place.chmod(0o777)


@pytest.fixture
def running(maker, shared):
    """A recording that runs in the shared folder."""
    maker.folder = shared
    recorder = maker.small(close=False)
    open_to_all(recorder.folder)
    yield recorder
    recorder.close()
