"""One part of a run whose disk failed: all that is made of it says so, where it is read first."""

import json
import shutil
import subprocess

import pytest

from meterlog.evidence import signing
from meterlog.recording import layout
from meterlog.recording.continuation import Continuation, continuation_bytes


@pytest.fixture(autouse=True)
def keys(monkeypatch, tmp_path):
    monkeypatch.setattr(signing, "key_folder", lambda: tmp_path / "keys")


def goes_on_from(folder, begun):
    """Let a recording be the last part of one; its first part is gone."""
    note = continuation_bytes(Continuation(begun, "no space left.", {}, {}))
    (folder / layout.CONTINUES).write_bytes(note)


@pytest.fixture
def begun(small, tmp_path):
    """Where the first part of ``small`` was: a long name, which no line may cut."""
    begun = tmp_path / "a-stick-in-the-workshop-of-mr-miller" / "run-with-the-old-part-of-the-fan"
    goes_on_from(small, begun)
    return begun


def plain(text):
    return " ".join(text.split())


def told_of(begun, part):
    return (
        f"ONE PART: It goes on from {begun}, whose disk failed: what came before is not in it."
        f" Put together with: meterlog join {part} --before {begun} --out {part}-whole"
    )


def test_the_review_does_not_say_flatly_that_a_speed_was_not_tried(run, small, tmp_path):
    assert "Not tried: speed 2" in plain(run("review", small).out)
    goes_on_from(small, tmp_path / "begun")
    said = run("review", small).out
    assert "Not tried in this part: speed 2" in plain(said)
    assert "Not tried:" not in said


def test_each_file_of_an_export_says_it(run, small, begun, tmp_path):
    run("export", small, "--out", tmp_path / "out")
    told = told_of(begun, small)
    for name in ("judgement.txt", "README.txt"):
        assert told in plain((tmp_path / "out" / name).read_text()), name
    judgement = (tmp_path / "out/judgement.txt").read_text()
    assert judgement.index("ONE PART") < judgement.index("Verdict: ")
    assert "Not tried:" not in judgement
    review = json.loads((tmp_path / "out/review.json").read_text())
    assert f"ONE PART: {review['one_part']}" == told


def test_so_does_what_is_imported_from_it_again_and_again(run, small, begun, tmp_path):
    told = "ONE PART: What it was imported from was one part: what came before is not in it."
    before = small
    for name in ("once", "twice"):
        run("export", before, "--out", tmp_path / f"{name}-out")
        before = tmp_path / name
        run("import", tmp_path / f"{name}-out", "--out", before)
        assert told in plain(run("review", before).out)
        assert "Not tried in this part: speed 2" in plain(run("review", before).out)
    assert json.loads(run("review", before, "--json").out)["one_part"] == told[len("ONE PART: ") :]
    (before / layout.PART).unlink()
    assert "ONE PART" not in run("review", before).out


def test_an_export_of_a_whole_recording_says_nothing_of_it(run, small, tmp_path):
    run("export", small, "--out", tmp_path / "out")
    for name in ("judgement.txt", "README.txt"):
        assert "ONE PART" not in (tmp_path / "out" / name).read_text(), name
    assert json.loads((tmp_path / "out/review.json").read_text())["one_part"] == ""


@pytest.fixture
def other(small, tmp_path):
    """Another recording like ``small``."""
    from dataclasses import replace

    from meterlog.recording.about_text import about_bytes, parse_about

    folder = tmp_path / "other"
    shutil.copytree(small, folder)
    path = folder / layout.ABOUT
    about = parse_about(path.read_bytes(), layout.ABOUT)[0]
    path.write_bytes(about_bytes(replace(about, recording_id="another")))
    return folder


def test_a_comparison_opens_with_it(run, other, small, begun):
    said = run("compare", other, small).out
    head = said[: said.index("\n\n")]
    assert f"small: {told_of(begun, small)}" in plain(head)
    assert said.count("ONE PART") == 1
    answer = json.loads(run("compare", other, small, "--json").out)
    assert any("ONE PART" in note for note in answer["notes"])


def pages_of(pack):
    tool = shutil.which("pdftotext")
    if tool is None:
        pytest.skip("pdftotext is not installed")
    made = subprocess.run([tool, str(pack / "claim.pdf"), "-"], capture_output=True, check=True)
    return made.stdout.decode().split("\f")


def test_a_claim_says_it_ahead_and_on_page_one(run, small, begun, tmp_path):
    run("job", tmp_path / "job.json", "--set", "work_order=WO-1")
    pack = tmp_path / "pack"
    said = run("claim", tmp_path / "job.json", "--before", small, "--out", pack)
    assert f"before: {told_of(begun, small)}" in plain(said.err)
    first = plain(pages_of(pack)[0])
    assert "ONE PART: It goes on from" in first
    assert "Not tried:" not in first


def test_a_pack_without_customer_data_says_it_without_the_names_of_folders(
    run, small, begun, tmp_path
):
    run("job", tmp_path / "job.json", "--set", "work_order=WO-1")
    pack = tmp_path / "pack"
    words = ("--before", small, "--out", pack, "--without-customer", "--unsigned")
    run("claim", tmp_path / "job.json", *words)
    pages = plain(" ".join(pages_of(pack)))
    assert "ONE PART: It goes on from another recording: what came before is not in it." in pages
    run("verify", pack / "claim.zip")
    shutil.unpack_archive(pack / "claim.zip", tmp_path / "bag")
    read = [one for one in (tmp_path / "bag").rglob("*") if one.suffix in {".txt", ".json"}]
    assert any("ONE PART" in one.read_text() for one in read)
    assert not [one.name for one in read if "miller" in one.read_text()]
