"""What makes a claim pass is told: other limits, one run twice, edits, the PDF of another pack."""

import json
import shutil
import subprocess

import pytest

from meterlog.evidence import signing
from meterlog.profile import load_limits
from meterlog.work.amendments import amendments_path


@pytest.fixture(autouse=True)
def keys(monkeypatch, tmp_path):
    monkeypatch.setattr(signing, "key_folder", lambda: tmp_path / "keys")


@pytest.fixture
def card(run, tmp_path):
    run("job", tmp_path / "job.json", "--set", "work_order=WO-1 (invented)")
    return tmp_path / "job.json"


@pytest.fixture
def again(run, small, tmp_path):
    """Import the table of the small recording once more, under another name."""
    run(
        *("import", tmp_path / "small.csv", "--time", "t", "--events", tmp_path / "marks.csv"),
        *("--assign", "motor-feed=feed", "--assign", "motor-return=return"),
        *("--assign", "motor-current=amps", "--accuracy", "motor-current=1.5+0.05"),
        *("--limits", "linear-12v", "--out", tmp_path / "again"),
    )
    return tmp_path / "again"


@pytest.fixture
def wide(tmp_path):
    """Limits of the same name as the shipped ones, but wider."""
    text = load_limits("linear-12v").text
    changed = text.replace("max_heat_w = 45", "max_heat_w = 80")
    assert changed != text
    path = tmp_path / "wide" / "linear-12v.toml"
    path.parent.mkdir()
    path.write_text(changed)
    return path


def first_page(pack):
    tool = shutil.which("pdftotext")
    if tool is None:
        pytest.skip("pdftotext is not installed")
    made = subprocess.run(
        [tool, "-l", "1", str(pack / "claim.pdf"), "-"], capture_output=True, check=True
    )
    return " ".join(made.stdout.decode().split())


CHANGED = "given for this judgement, and not by those it was recorded with (linear-12v)"


def test_other_limits_of_the_same_name_are_told_with_what_differs(run, small, card, wide, tmp_path):
    run("claim", card, "--after", small, "--limits", wide, "--out", tmp_path / "pack")
    said = first_page(tmp_path / "pack")
    assert CHANGED in said
    assert "They differ in controller.max_heat_w 45 -> 80." in said
    assert CHANGED in " ".join(run("review", small, "--limits", wide).out.split())
    run("export", small, "--limits", wide, "--out", tmp_path / "tables")
    told = [path.read_text() for path in (tmp_path / "tables").glob("*.txt")]
    assert any(CHANGED in " ".join(text.split()) for text in told)


def test_the_recordings_own_limits_given_by_name_are_no_others(run, small, card, tmp_path):
    run("claim", card, "--after", small, "--limits", "linear-12v", "--out", tmp_path / "pack")
    assert "given for this judgement" not in first_page(tmp_path / "pack")
    assert "given for this judgement" not in run("review", small, "--limits", "linear-12v").out


def test_one_run_imported_twice_is_told(run, small, again, card, tmp_path):
    run("claim", card, "--before", small, "--after", again, "--out", tmp_path / "pack")
    assert "to the last digit: they are one run, and nothing is shown of a repair." in first_page(
        tmp_path / "pack"
    )


def test_edits_on_top_are_named_by_a_check_and_damaged_ones_are_no_pass(run, small):
    assert "on top" not in run("verify", small).out
    run("amend", small, "--step", "0=2", "--who", "R. Quill", "--why", "wrong key")
    said = run("verify", small).out
    assert "intact. Every file agrees" in said
    assert "on top of it, where its seal does not reach: 1 edit." in said
    assert "R. Quill: the step at 0.000 s was relabelled from 1 to 2. Reason: wrong key." in said
    path = amendments_path(small)
    path.write_bytes(path.read_bytes().replace(b"wrong key", b"other key"))
    said = run("verify", small, code=1).out
    assert "as sealed, but the edits on top of it are NOT WHOLE." in said
    facts = json.loads(run("verify", small, "--json", code=1).out)
    assert (facts["intact"], len(facts["edits_damage"])) == (False, 1)


def test_the_pdf_and_the_zip_of_one_pack_carry_one_number(run, small, card, tmp_path):
    numbers = {}
    for name in ("one", "two"):
        run("claim", card, "--after", small, "--out", tmp_path / name)
        run("amend", small, "--step", f"0={3 if name == 'one' else 4}", "--who", "R", "--why", "w")
        for kind in ("pdf", "zip"):
            told = json.loads(run("verify", tmp_path / name / f"claim.{kind}", "--json").out)
            numbers.setdefault(name, set()).add(told["pack_sha256"])
    assert len(numbers["one"]) == len(numbers["two"]) == 1
    assert numbers["one"] != numbers["two"]
    (number,) = numbers["two"]
    assert f"pack: {number}" in run("verify", tmp_path / "two" / "claim.zip").out
