"""Verification: an intact folder passes, any flipped bit in any file is found and named."""

import hashlib
import random

import pytest

from meterlog.evidence import seal_digest, verify_folder
from meterlog.model.errors import RecordingUnreadable
from meterlog.recording import seal


def test_a_sealed_recording_is_intact(recording):
    found = verify_folder(recording.folder)
    assert found.problems == ()
    assert found.intact
    assert found.files == 9  # six of the payload, three tag files
    assert found.recording_id == recording.about.recording_id


def test_the_check_tells_how_far_it_is_and_can_be_ended(recording):
    parts = []
    assert verify_folder(recording.folder, parts.append).intact
    assert parts == sorted(parts)
    assert 0.0 < parts[0] < 0.5, "while files are hashed"
    assert any(0.5 < part < 1.0 for part in parts), "while readings are read"
    assert parts[-1] == 1.0

    def stop(part):
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        verify_folder(recording.folder, stop)


def test_a_flipped_bit_in_any_file_is_found_and_the_file_named(recording):
    rng = random.Random(11)
    files = [path for path in recording.folder.rglob("*") if path.is_file()]
    assert len(files) == 10
    for path in files:
        content = path.read_bytes()
        bits = len(content) * 8
        for place in {0, bits - 1, *rng.sample(range(bits), min(bits, 25))} if bits else ():
            wrong = bytearray(content)
            wrong[place // 8] ^= 1 << place % 8
            path.write_bytes(wrong)
            found = verify_folder(recording.folder)
            assert not found.intact
            assert any(path.name in problem for problem in found.problems)
        path.write_bytes(content)
    assert verify_folder(recording.folder).intact


def test_changed_readings_are_named_with_batch_and_rows(recording):
    path = recording.folder / "data/logger.arrows"
    content = bytearray(path.read_bytes())
    content[-200] ^= 4
    at = content.rindex(b"\xff\xff\xff\xff", 0, len(content) - 8) + 1200
    content[at] ^= 1
    path.write_bytes(content)
    problems = verify_folder(recording.folder).problems
    assert any("data/logger.arrows: differs from what was sealed" in text for text in problems)
    assert any("batch 1, rows 17 to 39" in problem for problem in problems)


@pytest.mark.parametrize("name", ["data/about.json", "data/logger.arrows", "data/bench.raw"])
def test_a_missing_file_is_named(recording, name):
    (recording.folder / name).unlink()
    problems = verify_folder(recording.folder).problems
    assert f"{name}: is missing; manifest-sha256.txt lists it." in problems


@pytest.mark.parametrize("name", ["manifest-sha256.txt", "tagmanifest-sha256.txt", "bag-info.txt"])
def test_a_missing_tag_file_is_named(recording, name):
    (recording.folder / name).unlink()
    assert any(name in problem for problem in verify_folder(recording.folder).problems)


def test_a_file_that_was_put_in_later_is_named(recording):
    (recording.folder / "data/new").mkdir()
    (recording.folder / "data/new/extra.txt").write_text("x")
    problems = verify_folder(recording.folder).problems
    assert "data/new/extra.txt: is not listed in the seal; it was added later." in problems
    assert any("bag-info.txt: states" in problem for problem in problems)


def test_a_cache_beside_the_payload_breaks_nothing(recording):
    (recording.folder / "cache").mkdir()
    (recording.folder / "cache/envelope.bin").write_bytes(b"rebuildable")
    assert verify_folder(recording.folder).intact


@pytest.mark.parametrize("names", [("bagit.txt",), ("bagit.txt", "manifest-sha256.txt")])
def test_what_is_left_of_a_recording_is_not_intact(recording, names):
    for name in (*names, "data/about.json"):
        (recording.folder / name).unlink()
    problems = verify_folder(recording.folder).problems
    assert "bagit.txt: is missing; the recording is not sealed." in problems
    assert any("there is no data/about.json" in problem for problem in problems)


def test_swapping_two_files_is_found(recording):
    one, two = recording.folder / "data/logger.raw", recording.folder / "data/bench.raw"
    first, second = one.read_bytes(), two.read_bytes()
    one.write_bytes(second)
    two.write_bytes(first)
    problems = verify_folder(recording.folder).problems
    assert sum("differs" in problem for problem in problems) == 2


def test_an_unsealed_recording_is_not_intact_and_says_why(desk, tmp_path):
    recording = desk.make(tmp_path / "open", sealed=False)
    found = verify_folder(recording.folder)
    assert found.problems == ("bagit.txt: is missing; the recording is not sealed.",)


def test_a_tear_that_was_there_when_it_was_sealed_is_a_remark_and_no_change(desk, tmp_path):
    recording = desk.make(tmp_path / "torn", sealed=False)
    path = recording.folder / "data/logger.arrows"
    path.write_bytes(path.read_bytes()[:-50])
    seal(recording.folder, recovered=True)
    found = verify_folder(recording.folder)
    assert found.intact
    assert "logger.arrows" in found.remarks[0]
    path.write_bytes(path.read_bytes()[:-1])
    assert not verify_folder(recording.folder).intact


def test_a_folder_without_a_recording_is_refused(tmp_path):
    with pytest.raises(RecordingUnreadable, match="no recording"):
        verify_folder(tmp_path)


def test_the_seal_that_can_be_written_down_is_the_digest_of_the_manifest(recording):
    manifest = (recording.folder / "manifest-sha256.txt").read_bytes()
    assert seal_digest(recording.folder) == hashlib.sha256(manifest).hexdigest()
    assert seal_digest(recording.folder / "data") == ""
