"""A job card changed in a real second process that is killed: whole, and never behind its word."""

import json
import os
import subprocess
import sys
import time

import pytest

from meterlog.work.job_cards import change_card, load_card

TYPING = """
import sys
from dataclasses import replace
from pathlib import Path
from meterlog.work.job_cards import change_card

path = Path(sys.argv[1])
for at in range(1_000_000):
    change_card(path, lambda card: replace(card, notes=f"{at} " * 2000, work_order=str(at)))
    print(at, flush=True)
"""

DYING = """
import os, signal, sys
from dataclasses import replace
from pathlib import Path
from meterlog.work.job_cards import change_card, load_card

path, told = Path(sys.argv[1]), set()
change_card(path, lambda card: replace(card, notes="0"))

WORKING = ("job_cards.py", "append_file.py", "file_lock.py", "system_lock.py",
           "pathlib.py")

def die_at(call):
    # Before and after each call of the system's own functions: open, write, sync, replace ...
    seen = 0
    def watch(frame, event, arg):
        nonlocal seen
        if event.startswith("c_") and frame.f_code.co_filename.endswith(WORKING):
            seen += 1
            if seen == call:
                os.kill(os.getpid(), signal.SIGKILL)
    sys.setprofile(watch)

for call in range(1, 100_000):
    before = load_card(path).notes
    child = os.fork()
    if child == 0:
        die_at(call)
        change_card(path, lambda card: replace(card, notes=f"{call} " * 2000))
        sys.setprofile(None)
        os._exit(0)
    _, status = os.waitpid(child, 0)
    now = load_card(path).notes
    assert now in {before, f"{call} " * 2000}, (call, now[:50])
    told.add(now == before)
    if os.WIFEXITED(status):
        assert os.WEXITSTATUS(status) == 0, status
        assert now != before
        break
assert told == {True, False}
print(call)
"""


@pytest.mark.kill
@pytest.mark.parametrize("wait_s", [0.0, 0.031])
def test_killed_while_it_works_the_card_is_whole_and_has_what_it_said(tmp_path, wait_s):
    path = tmp_path / "job.json"
    child = subprocess.Popen(
        [sys.executable, "-c", TYPING, str(path)], stdout=subprocess.PIPE, text=True
    )
    try:
        assert child.stdout.readline() == "0\n"
        time.sleep(wait_s)
    finally:
        child.kill()
        told = [0, *(int(line) for line in child.stdout.read().splitlines())]
        child.wait(20)
        child.stdout.close()
    card = load_card(path)
    kept = int(card.work_order)
    assert kept in {told[-1], told[-1] + 1}  # one more may have been kept, and not said yet
    assert card.notes == f"{kept} " * 2000
    assert json.loads(path.read_text("utf-8"))["format"] == "meterlog job card 1"
    # what it held when it died is free, and what it left is cleared away
    change_card(path, lambda card: card.__class__(work_order="next"))
    assert load_card(path).work_order == "next"
    assert [one.name for one in tmp_path.iterdir()] == ["job.json"]


@pytest.mark.kill
@pytest.mark.skipif(not hasattr(os, "fork"), reason="needs fork")
def test_killed_at_every_single_step_of_a_change_the_card_is_the_old_or_the_new_one(tmp_path):
    path = tmp_path / "job.json"
    done = subprocess.run(
        [sys.executable, "-c", DYING, str(path)],
        capture_output=True,
        text=True,
        check=False,
        timeout=240,
    )
    assert done.returncode == 0, done.stderr
    assert int(done.stdout) > 50  # so many places were tried
    assert [one.name for one in tmp_path.iterdir()] == ["job.json"]
