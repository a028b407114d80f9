"""Exit codes of folders: 2 where none can be meant, 1 where what was recorded is not whole."""

import json
import shutil

import pytest


def flip(path, at):
    content = bytearray(path.read_bytes())
    content[at] ^= 1
    path.write_bytes(content)


@pytest.mark.parametrize("command", ["review", "verify", "export"])
@pytest.mark.parametrize("place", ["absent", "empty", "file.csv", "small/data/original"])
def test_a_folder_that_is_no_recording_is_bad_use(run, small, tmp_path, command, place):
    del small
    (tmp_path / "empty").mkdir()
    (tmp_path / "file.csv").write_text("t\n0\n")
    more = ["--out", tmp_path / "out"] if command == "export" else []
    said = run(command, tmp_path / place, *more, code=2)
    assert said.err.startswith(f"meterlog: {tmp_path / place}: ")
    assert "Give the folder of one recording" in said.err
    assert said.out == ""
    assert not (tmp_path / "out").exists()


def test_a_folder_of_recordings_names_one_of_them(run, small, tmp_path):
    assert f"There is one in it: {small}." in run("review", tmp_path, code=2).err


@pytest.mark.parametrize("command", ["export", "import", "record", "demo"])
@pytest.mark.parametrize(
    ("place", "words"),
    [
        ("used", "is not empty"),
        ("small.csv", "is no folder"),
        ("small/evidence", "lies inside the recording"),
        ("small/data/x/y", "lies inside the recording"),
        ("small", "is not empty"),
    ],
)
def test_a_folder_that_must_not_be_written_to_is_bad_use(
    run, small, tmp_path, command, place, words
):
    (tmp_path / "used").mkdir()
    (tmp_path / "used" / "letter.txt").write_text("mine")
    rest = {
        "export": [small],
        "import": [tmp_path / "small.csv", "--time", "t", "--assign", "motor-feed=feed"],
        "record": ["--meter", "line-logger@/no/such/port"],
        "demo": ["--headless"],
    }[command]
    said = run(command, *rest, "--out", tmp_path / place, code=2)
    assert words in said.err
    assert str(tmp_path / place) in said.err
    assert [path.name for path in (tmp_path / "used").iterdir()] == ["letter.txt"]
    run("verify", small)


def test_an_export_goes_once_into_a_folder(run, small, tmp_path):
    run("export", small, "--out", tmp_path / "out")
    before = {path: path.read_bytes() for path in (tmp_path / "out").iterdir()}
    assert {"judgement.txt", "review.json", "findings.csv", "trace.png"} <= {
        path.name for path in before
    }
    run("export", small, "--out", tmp_path / "out", code=2)
    assert {path: path.read_bytes() for path in (tmp_path / "out").iterdir()} == before


def test_a_place_below_a_file_is_a_failure_of_the_disk(run, small, tmp_path):
    said = run("export", small, "--out", tmp_path / "small.csv" / "out", code=1)
    assert "Not a directory" in said.err


def test_a_recording_that_was_changed_or_not_sealed_fails_the_check(run, small):
    flip(small / "data/imported.arrows", -400)
    assert "data/imported.arrows: differs" in run("verify", small, code=1).out
    (small / "bagit.txt").unlink()
    assert "not sealed" in run("verify", small, code=1).out


@pytest.mark.parametrize("harm", ["changed", "garbled", "emptied", "removed", "unsealed too"])
def test_the_check_fails_also_when_about_json_is_what_was_damaged(run, small, harm):
    about = small / "data/about.json"
    if harm == "changed":
        about.write_text(about.read_text().replace("linear-12v", "linear-13v"))
    elif harm == "garbled":
        about.write_text("{")
    elif harm == "emptied":
        about.write_bytes(b"")
    else:
        about.unlink()
    if harm == "unsealed too":
        (small / "bagit.txt").unlink()
    said = json.loads(run("verify", small, "--json", code=1).out)
    assert said["intact"] is False
    assert any("about.json" in problem for problem in said["problems"])
    if harm != "changed":
        assert run("review", small, code=1).out == ""


def test_a_review_says_above_its_findings_what_is_not_whole(run, small):
    whole = run("review", small)
    assert "NOT WHOLE" not in whole.out + whole.err
    assert "Dead segment" in whole.out
    flip(small / "data/imported.arrows", (small / "data/imported.arrows").stat().st_size // 2)
    said = run("review", small)
    head, _, judgement = said.out.partition("Verdict: ")
    assert judgement
    assert "NOT WHOLE: data/imported.arrows: batch 0, rows 0 to 599" in head
    assert "The findings rest on the readings that are left." in head
    assert "NOT WHOLE" in said.err  # for whoever sends the answer to a file


def test_a_review_says_when_marks_are_missing(run, small):
    (small / "data/events.jsonl").unlink()
    said = run("review", small).out
    assert "NOT WHOLE: data/events.jsonl: is missing." in said
    assert "Speeds, taps and notes may be missing" in said
    assert "The findings rest on the readings" not in said


def test_a_review_says_when_nobody_sealed_the_recording(run, small):
    (small / "bagit.txt").unlink()
    assert "NOT SEALED: " in run("review", small).out


def test_a_review_says_that_a_recording_is_one_part_of_a_whole(run, small, tmp_path):
    from meterlog.recording import layout
    from meterlog.recording.continuation import Continuation, continuation_bytes

    went_on = Continuation(tmp_path / "before", "no space left.", {}, {})
    (small / layout.CONTINUES).write_bytes(continuation_bytes(went_on))
    said = " ".join(run("review", small).out.split())
    assert f"ONE PART: It goes on from {tmp_path / 'before'}, whose disk failed" in said
    assert f"meterlog join {small}" in said
    (small / layout.CONTINUES).write_text("{")
    said = " ".join(run("review", small).out.split())
    assert "nobody knows what this recording goes on with" in said


def test_a_verification_tells_what_was_torn_already_when_it_was_sealed(run, small):
    from meterlog.recording import layout, seal

    torn = small.with_name("torn")
    shutil.copytree(small, torn)
    for name in (layout.BAGIT, layout.BAG_INFO, layout.MANIFEST, layout.TAG_MANIFEST):
        (torn / name).unlink()
    arrows = torn / "data/imported.arrows"
    arrows.write_bytes(arrows.read_bytes()[:-30])
    seal(torn, recovered=True)
    said = run("verify", torn).out
    assert "intact" in said
    assert "known: data/imported.arrows" in said
    assert "RECOVERED" in run("review", torn).out
