"""A pack that is as it was made passes; anything else is found, named, and the rows with it."""

import os
import random
import zipfile

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from meterlog.evidence.pack_bag import tag_files
from meterlog.evidence.pack_verification import SignatureState
from meterlog.evidence.pack_verify import is_pack, verify_pack
from meterlog.evidence.pack_zip import write_zip
from meterlog.model.errors import EvidenceError, RecordingUnreadable


def files(pack):
    return sorted(path for path in pack.rglob("*") if path.is_file())


def flip(path, bit):
    content = bytearray(path.read_bytes())
    content[bit // 8] ^= 1 << bit % 8
    path.write_bytes(content)


def check_flip(pack, path, bit):
    """Check with one bit flipped: found, the file named, and the row where it is a table."""
    whole = path.read_bytes()
    flip(path, bit)
    found = verify_pack(pack, own="")
    path.write_bytes(whole)
    name = path.relative_to(pack).as_posix()
    assert not found.intact
    assert any(name in problem for problem in found.problems), (name, bit)
    if path.suffix == ".csv":
        (one,) = [one for one in found.changed if one.file == name]
        row = whole[: bit // 8].count(b"\n") + 1
        assert any(first - 1 <= row <= last + 1 for first, last in one.rows), (one, row)


def test_a_pack_is_intact_and_says_who_signed(pack, packer):
    found = verify_pack(pack, own="")
    assert found.problems == ()
    assert found.remarks == ()
    assert found.files == 3 + 3 + 1 + 2  # payload, lists, README, row checks
    assert found.signature.state is SignatureState.GOOD
    assert packer.signer.fingerprint in found.signature.words
    own = verify_pack(pack, own=packer.signer.fingerprint)
    assert "your own" in own.signature.words


def test_one_flipped_bit_in_each_file_in_turn_is_found_each_time(pack):
    rng = random.Random(6)
    assert len(files(pack)) == 11
    for path in files(pack):
        bits = path.stat().st_size * 8
        for bit in {0, bits - 1, *rng.sample(range(bits), 12)}:
            check_flip(pack, path, bit)
    assert verify_pack(pack, own="").intact


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.data())
def test_any_flipped_bit_is_found(pack, data):
    path = data.draw(st.sampled_from(files(pack)))
    check_flip(pack, path, data.draw(st.integers(0, path.stat().st_size * 8 - 1)))


def test_a_changed_cell_is_told_with_its_row(pack):
    path = pack / "data/before/findings.csv"
    lines = path.read_bytes().splitlines(keepends=True)
    lines[3] = lines[3].replace(b".25", b".75")
    path.write_bytes(b"".join(lines))
    (problem,) = verify_pack(pack, own="").problems
    assert problem == (
        "data/before/findings.csv: differs from what was packed (SHA-256 in manifest-sha256.txt): "
        "row 4 differs."
    )


def test_a_file_added_or_gone_is_named(pack):
    (pack / "data/new.txt").write_bytes(b"x")
    (pack / "note.txt").write_bytes(b"x")
    (pack / "data/photo of the plug.png").unlink()
    problems = verify_pack(pack, own="").problems
    assert "data/new.txt: is listed nowhere; it was added later." in problems
    assert "note.txt: is listed nowhere; it was added later." in problems
    assert "data/photo of the plug.png: is missing; manifest-sha256.txt lists it." in problems


@pytest.mark.parametrize("name", ["bagit.txt", "bag-info.txt", "manifest-sha256.txt"])
def test_a_list_that_is_gone_is_named(pack, name):
    (pack / name).unlink()
    assert f"{name}: is missing; tagmanifest-sha256.txt lists it." in verify_pack(pack).problems


def test_without_the_tag_manifest_the_signature_fits_nothing(pack):
    (pack / "tagmanifest-sha256.txt").unlink()
    found = verify_pack(pack, own="")
    assert "tagmanifest-sha256.txt: is missing." in found.problems
    assert found.signature.state is SignatureState.BAD


def test_a_signature_taken_away_is_told(pack, packer):
    (pack / "signature.json").unlink()
    found = verify_pack(pack, own="")
    (problem,) = found.problems
    assert problem.startswith("signature.json: is missing; bag-info.txt says that")
    assert found.signature.words == "The signature is missing."


def reseal(pack, packer, signer):
    """Make all lists anew over what is there, as somebody would who hides an edit."""
    for name in ("bagit.txt", "bag-info.txt", "manifest-sha256.txt", "tagmanifest-sha256.txt"):
        (pack / name).unlink()
    for path in (pack / "row-checks").rglob("*.txt"):
        path.unlink()
    signature = (pack / "signature.json").read_bytes()
    (pack / "signature.json").unlink()
    for name, content in tag_files(pack, packer.info, signer).items():
        (pack / name).write_bytes(content)
    return signature


def test_lists_made_anew_are_found_by_the_signature_or_by_whose_it_is(pack, packer):
    (pack / "data/before/findings.csv").write_bytes(packer.table(5))
    old = reseal(pack, packer, packer.stranger)
    found = verify_pack(pack, key=packer.signer.fingerprint, own="")
    (problem,) = found.problems
    assert "was made by the key" in problem
    assert "NOT the one asked for" in found.signature.words
    assert verify_pack(pack, key=packer.stranger.fingerprint).signature.told
    (pack / "signature.json").write_bytes(old)
    found = verify_pack(pack, own="")
    assert found.problems == ("signature.json: does not fit tagmanifest-sha256.txt.",)
    assert "does not fit" in found.signature.words


def test_the_key_named_in_the_pack_must_be_the_one_that_signed(pack, packer):
    reseal(pack, packer, packer.signer)
    manifest = (pack / "tagmanifest-sha256.txt").read_bytes()
    (pack / "signature.json").write_bytes(packer.stranger.sign(manifest).to_bytes())
    (problem,) = verify_pack(pack, own="").problems
    assert f"names {packer.signer.fingerprint}, but {packer.stranger.fingerprint}" in problem


def test_an_unsigned_pack_is_not_what_was_asked_for_by_key(packer, tmp_path):
    folder = packer.make(tmp_path / "claim", signed=False)
    (problem,) = verify_pack(folder, key=packer.signer.fingerprint).problems
    assert "nobody signed" in problem


@pytest.mark.skipif(os.name != "posix", reason="links are of POSIX")
def test_links_are_named_and_never_followed(pack, tmp_path):
    secret = tmp_path / "secret"
    secret.write_bytes((pack / "data/before/findings.csv").read_bytes())
    (pack / "data/before/findings.csv").unlink()
    (pack / "data/before/findings.csv").symlink_to(secret)
    problems = verify_pack(pack, own="").problems
    assert "data/before/findings.csv: is no plain file; it was not read." in problems
    assert any("findings.csv: is missing" in text for text in problems)


@pytest.mark.parametrize("name", ["/etc/hostname", "data/../../x", "C:/x", "data\\..\\..\\x"])
def test_a_list_that_names_files_outside_is_damaged(pack, name):
    path = pack / "manifest-sha256.txt"
    path.write_bytes(path.read_bytes() + f"{'0' * 64}  {name}\n".encode())
    problems = verify_pack(pack, own="").problems
    assert "manifest-sha256.txt: line 4 is damaged." in problems
    assert not any(name in text for text in problems)


def test_a_sealed_recording_inside_is_checked_by_its_own_seal_too(packer, desk, tmp_path):
    folder = packer.fill(tmp_path / "claim")
    desk.make(folder / "data/before/recording")
    path = folder / "data/before/recording/data/events.jsonl"
    path.write_bytes(path.read_bytes()[:-20])
    for name, content in tag_files(folder, packer.info, packer.signer).items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(content)
    found = verify_pack(folder, own="")
    assert found.intact
    assert any("events.jsonl: line 3 is torn off" in text for text in found.remarks)
    assert all("so when the pack was made" in text for text in found.remarks)
    flip(folder / "data/before/recording/data/logger.raw", 200)
    problems = verify_pack(folder, own="").problems
    assert any(text.startswith("data/before/recording/data/logger.raw: diff") for text in problems)


def test_a_recording_is_no_pack_and_a_pack_is_none(desk, pack, tmp_path):
    assert is_pack(pack)
    assert not is_pack(desk.make(tmp_path / "run").folder)
    assert not is_pack(tmp_path)


def test_the_zip_is_checked_as_the_folder_is(pack, packer, tmp_path):
    write_zip(pack, tmp_path / "claim.zip")
    found = verify_pack(tmp_path / "claim.zip", own="")
    assert (found.kind, found.problems) == ("zip", ())
    assert found.signature.fingerprint == packer.signer.fingerprint
    path = pack / "data/before/readings-m.csv"
    lines = path.read_bytes().splitlines(keepends=True)
    lines[700] = b"70.0,9.99\r\n"
    path.write_bytes(b"".join(lines))
    write_zip(pack, tmp_path / "changed.zip")
    found = verify_pack(tmp_path / "changed.zip", own="")
    ((first, last),) = found.changed[0].rows
    assert first <= 701 <= last
    assert last - first < 100
    assert found.to_dict()["changed"] == [
        {"file": "data/before/readings-m.csv", "rows": [[first, last]]}
    ]


def test_a_bit_flipped_in_the_packed_bytes_of_a_zip_is_found(pack, tmp_path):
    path = tmp_path / "claim.zip"
    write_zip(pack, path)
    whole = path.read_bytes()
    start = whole.index(b"data/before/readings-m.csv") + 60
    for place in range(start, start + 400, 37):
        wrong = bytearray(whole)
        wrong[place] ^= 4
        path.write_bytes(wrong)
        found = verify_pack(path, own="")
        assert any("readings-m.csv" in text for text in found.problems)


def test_of_a_file_torn_in_the_zip_nobody_is_said_to_have_taken_rows_out(pack, tmp_path):
    path = tmp_path / "claim.zip"
    write_zip(pack, path)
    whole = path.read_bytes()
    with zipfile.ZipFile(path) as archive:
        entry = next(one for one in archive.infolist() if one.filename.endswith(".csv"))
    wrong = bytearray(whole)
    begin = entry.header_offset + 30 + len(entry.filename)
    wrong[begin + entry.compress_size // 2] ^= 0x55
    path.write_bytes(wrong)
    found = verify_pack(path, own="")
    assert not found.intact
    name = entry.filename.partition("/")[2]
    (told,) = [one for one in found.problems if name in one]
    assert "is damaged in the zip" in told
    words = " ".join(found.problems)
    assert "taken out" not in words
    assert "Payload-Oxum" not in words
    assert "bytes.files" not in words


def test_where_a_line_of_the_lists_is_damaged_nothing_is_said_to_have_been_added(pack):
    lists = pack / "manifest-sha256.txt"
    content = lists.read_bytes()
    lists.write_bytes(b"\xff" + content[1:])
    words = " ".join(verify_pack(pack, own="").problems)
    assert "line 1 is damaged" in words
    assert "is in no line of the lists that can be read" in words
    assert "added later" not in words


@pytest.mark.parametrize("name", ["manifest-sha256.txt", "tagmanifest-sha256.txt"])
def test_without_a_list_nothing_is_said_to_have_been_added(pack, name):
    (pack / name).rename(pack / f"{name}x")
    problems = verify_pack(pack, own="").problems
    assert any(one.startswith(f"{name}: is missing") for one in problems)
    assert "added later" not in " ".join(problems)
    (told,) = [one for one in problems if one.startswith(f"Without {name} it can't be told")]
    assert "or were added: " in told


def test_what_is_no_pack_is_told(tmp_path):
    (tmp_path / "x.zip").write_bytes(b"PK nothing")
    with pytest.raises(EvidenceError, match="can't be read as a zip"):
        verify_pack(tmp_path / "x.zip")
    with pytest.raises(EvidenceError, match="can't be read"):
        verify_pack(tmp_path / "none")


def test_folders_without_end_are_refused_with_the_folder(pack):
    (pack / "data" / "/".join("d" * 40)).mkdir(parents=True)
    with pytest.raises(RecordingUnreadable, match="more than 32 levels deep") as refused:
        verify_pack(pack, own="")
    assert refused.value.subject == str(pack / "data/d/d")
