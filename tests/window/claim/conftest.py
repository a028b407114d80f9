"""Two small recordings of an invented fan, a job that holds them, and keys of no one."""

import pytest

from meterlog import cli
from meterlog.evidence import signing
from meterlog.window.job_at_hand import JobAtHand
from meterlog.window.long_work import LongWork
from meterlog.work.job_folder import Side


@pytest.fixture(autouse=True)
def keys_of_its_own(monkeypatch, tmp_path):
    """No test signs with the key of the person at this computer."""
    # Not by another function: the pack is made in a process of its own.
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    folder = signing.key_folder()
    assert tmp_path in folder.parents
    return folder


@pytest.fixture
def command(capsys):
    """Run a command of the program in this process; it must succeed."""

    def run(*words):
        assert cli.main([str(word) for word in words]) == 0, capsys.readouterr()
        return capsys.readouterr().out

    return run


@pytest.fixture
def recorded(command, tmp_path):
    """Make a sealed recording of 6 s at 50 rows a second; a dead one has no current for 1 s."""

    def make(name, *, dead=False):
        rows = ["t,feed,return,amps"]
        for k in range(300):
            gone = dead and 150 <= k < 200
            rows.append(f"{k / 50:.2f},12.5,{0 if gone else 8.5},{0 if gone else 4}")
        table, marks = tmp_path / f"{name}.csv", tmp_path / "marks.csv"
        table.write_text("\n".join(rows) + "\n")
        marks.write_text("elapsed_s,kind,value\n0,speed,1\n")
        command(
            *("import", table, "--time", "t", "--events", marks),
            *("--assign", "motor-feed=feed", "--assign", "motor-return=return"),
            *("--assign", "motor-current=amps", "--limits", "linear-12v"),
            *("--out", tmp_path / "shelf" / name),
        )
        return tmp_path / "shelf" / name

    return make


@pytest.fixture
def at_hand(tmp_path):
    return JobAtHand(lambda: tmp_path / "shelf", tmp_path / "settings")


@pytest.fixture
def full(at_hand, recorded):
    """Give the job at hand with a recording before and one after."""
    for key, text in (("work_order", "WO-7781"), ("customer", "Imra Vantablank")):
        at_hand.enter(key, text)
    at_hand.take_recording(recorded("before", dead=True))
    at_hand.fit(Side.NEW)
    at_hand.take_recording(recorded("after"))
    return at_hand


@pytest.fixture
def in_a_thread(monkeypatch):
    """Make and check packs in a thread: a process of its own takes two seconds to start.

    That it does the same in a process is seen by ``test_whole_claim.py`` and the whole jobs.
    """
    for desk in ("claim_desk", "check_desk"):
        monkeypatch.setattr(f"meterlog.window.claim_page.{desk}.LongProcess", LongWork)
