"""``meterlog claim``: a card that contradicts the run before the repair is told, also inside."""

import shutil
import subprocess

import pytest

from meterlog.evidence import signing


@pytest.fixture(autouse=True)
def keys(monkeypatch, tmp_path):
    monkeypatch.setattr(signing, "key_folder", lambda: tmp_path / "keys")


@pytest.fixture
def stated(run, tmp_path):
    """Import a short invented recording under conditions."""

    def make(name, *conditions):
        rows = ["t,amps", *(f"{k / 10:.1f},5.0" for k in range(60))]
        (tmp_path / f"{name}.csv").write_text("\n".join(rows) + "\n")
        said = [word for one in conditions for word in ("--condition", one)]
        run(
            *("import", tmp_path / f"{name}.csv", "--time", "t", "--assign", "motor-current=amps"),
            *("--out", tmp_path / name, *said),
        )
        return tmp_path / name

    return make


@pytest.fixture
def card(run, tmp_path):
    path = tmp_path / "job.json"
    run("job", path, "--set", "filter=clogged", "--set", "battery=12,4 V, 3 years")
    return path


def _pages(pack):
    tool = shutil.which("pdftotext")
    if tool is None:
        pytest.skip("pdftotext is not installed")
    pdf = str(pack / "claim.pdf")
    made = subprocess.run([tool, pdf, "-"], capture_output=True, check=True)
    return " ".join(made.stdout.decode().split())


def test_it_is_told_ahead_and_in_the_pack(run, card, stated, tmp_path):
    before = stated("old", "filter=used", "battery_v=12.6")
    # A new filter and a charged battery are what a repair leaves.
    after = stated("new", "filter=new", "battery_v=13.1")
    pack = tmp_path / "pack"
    told = run("claim", card, "--before", before, "--after", after, "--out", pack)
    said = "The job card gives 'clogged' for the filter; the run before the repair was recorded"
    assert " ".join(told.err.split()).count(said) == 1
    assert "12.6 V at it, fan off" in told.err
    assert "13.1 V at it" not in told.err
    pages = _pages(pack)
    assert pages.count(said) == 2  # on the first page and under the job
    assert "the run after the repair was recorded" not in pages


def test_alone_the_run_after_the_repair_is_held_against_it(run, card, stated, tmp_path):
    after = stated("new", "filter=used")
    told = run("claim", card, "--after", after, "--out", tmp_path / "pack")
    assert "the run after the repair was recorded with the cabin filter 'used'" in told.err
    assert "the run after the repair" in _pages(tmp_path / "pack")


def test_where_they_agree_nothing_is_told(run, card, stated, tmp_path):
    before = stated("old", "filter=clogged", "battery_v=12.4")
    told = run("claim", card, "--before", before, "--out", tmp_path / "pack")
    assert "job card gives" not in told.err
