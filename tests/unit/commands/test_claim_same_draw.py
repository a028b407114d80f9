"""``meterlog claim``: where old and new part draw the same, page 1 says what that comes to."""

import json
import random
import shutil
import subprocess

import pytest

from meterlog.evidence import signing


@pytest.fixture(autouse=True)
def keys(monkeypatch, tmp_path):
    monkeypatch.setattr(signing, "key_folder", lambda: tmp_path / "keys")


@pytest.fixture
def recorded(run, tmp_path):
    """Import an invented run at speeds 1 and 2; no more than 8 A are allowed at speed 2."""

    def make(name, amps, started):
        dice = random.Random(name)
        rows = ["t,feed,return,amps"]
        for k in range(600):
            low = k < 300
            values = (12.5, 8.0 if low else 5.0, 4.0 if low else amps)
            said = ",".join(f"{one + dice.gauss(0.0, 0.01):.4f}" for one in values)
            minute, second = divmod(k / 10, 60)
            rows.append(f"{started}:{int(minute):02}:{second:04.1f}Z,{said}")
        (tmp_path / f"{name}.csv").write_text("\n".join(rows) + "\n")
        (tmp_path / "marks.csv").write_text("elapsed_s,kind,value\n0,speed,1\n30,speed,2\n")
        run(
            *("import", tmp_path / f"{name}.csv", "--time", "t"),
            *("--events", tmp_path / "marks.csv", "--limits", "linear-12v"),
            *("--assign", "motor-feed=feed", "--assign", "motor-return=return"),
            *("--assign", "motor-current=amps", "--accuracy", "motor-current=0.5+0.01"),
            *("--accuracy", "motor-feed=0.1+0.01", "--accuracy", "motor-return=0.1+0.01"),
            *("--out", tmp_path / name),
        )
        return tmp_path / name

    return make


def first_page(pack):
    tool = shutil.which("pdftotext")
    if tool is None:
        pytest.skip("pdftotext is not installed")
    pdf = str(pack / "claim.pdf")
    made = subprocess.run([tool, "-l", "1", pdf, "-"], capture_output=True, check=True)
    return " ".join(made.stdout.decode().split())


SAID = "No difference from the new part is seen at speed 2, where the current of this run is beyond"


def test_it_is_told_on_page_one_and_by_the_command(run, recorded, tmp_path):
    old = recorded("old", 9.5, "2030-01-02T03")
    new = recorded("new", 9.5, "2030-01-03T03")
    card, pack = tmp_path / "job.json", tmp_path / "pack"
    run("job", card, "--set", "work_order=WO-1")
    words = ("claim", card, "--before", old, "--after", new, "--unsigned")
    told = run(*words, "--out", pack)
    assert f"before: {SAID}" in " ".join(told.err.split())
    page = first_page(pack)
    assert "The motor draws too much current" in page
    assert "No difference beyond the uncertainty is seen at speeds 1 and 2" in page
    assert SAID in page
    answer = json.loads(run(*words, "--json", "--out", tmp_path / "again").out)
    assert any(SAID in one for one in answer["doubts"])


def test_a_new_part_that_draws_less_raises_no_doubt(run, recorded, tmp_path):
    old = recorded("old", 9.5, "2030-01-02T03")
    new = recorded("new", 6.0, "2030-01-03T03")
    card, pack = tmp_path / "job.json", tmp_path / "pack"
    run("job", card, "--set", "work_order=WO-1")
    told = run("claim", card, "--before", old, "--after", new, "--unsigned", "--out", pack)
    assert "No difference from the new part" not in told.err + first_page(pack)
