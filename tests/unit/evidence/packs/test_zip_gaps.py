"""Bytes of a zip that no list of the pack covers are told: other programs may see files there."""

import struct
import zipfile

import pytest

from meterlog.evidence.pack_verify import verify_pack
from meterlog.evidence.pack_zip import write_zip


@pytest.fixture
def packed(pack, tmp_path):
    path = tmp_path / "claim.zip"
    write_zip(pack, path)
    assert verify_pack(path, own="").intact
    return path


def problems(path):
    return verify_pack(path, own="").problems


def test_bytes_before_between_and_behind_are_told(packed):
    whole = packed.read_bytes()
    packed.write_bytes(whole + whole)
    (told,) = problems(packed)
    assert told.startswith("The zip holds bytes at its beginning that belong to no file")
    packed.write_bytes(whole + b"more")
    (told,) = problems(packed)
    assert told.startswith("The zip holds bytes at its end that belong to no file")
    # An entry that is written and then taken out of the list.
    with zipfile.ZipFile(packed, "w") as archive:
        for name in ("claim/data/a", "claim/data/hidden", "claim/data/z"):
            archive.writestr(name, b"x")
        archive.filelist.pop(1)
    assert any("bytes behind claim/data/a that belong" in text for text in problems(packed))


def test_comments_are_told(packed):
    with zipfile.ZipFile(packed, "a") as archive:
        archive.comment = b"the fan was in order"
        archive.filelist[0].comment = b"and so was this"
    told = problems(packed)
    assert told[0].endswith("has a comment in the zip, which no list covers.")
    assert told[1:] == ("The zip has a comment, which no list covers.",)


def test_a_second_name_is_told(packed, pack):
    with zipfile.ZipFile(packed, "w") as archive:
        for path in sorted(pack.rglob("*")):
            if path.is_file():
                entry = zipfile.ZipInfo(f"claim/{path.relative_to(pack).as_posix()}")
                if path.name == "README.txt":
                    other = b"claim/other.txt"
                    entry.extra = struct.pack("<HHBI", 0x7075, 5 + len(other), 1, 0) + other
                archive.writestr(entry, path.read_bytes())
    (told,) = problems(packed)
    assert told == "claim/README.txt: has a second name in the zip, which other programs may take."


def test_a_zip_that_another_program_packed_anew_is_intact(packed, pack, tmp_path):
    class Pipe:
        """A file that can't go back, so that sizes stand behind the entries."""

        def __init__(self, stream):
            self.write, self.flush = stream.write, stream.flush

    with (tmp_path / "again.zip").open("wb") as stream, zipfile.ZipFile(Pipe(stream), "w") as out:
        for path in sorted(pack.rglob("*")):
            out.write(path, f"claim/{path.relative_to(pack).as_posix()}", zipfile.ZIP_DEFLATED)
    assert problems(tmp_path / "again.zip") == ()
    with zipfile.ZipFile(packed, "w") as out:
        for path in sorted(pack.rglob("*")):
            if path.is_file():
                name = f"claim/{path.relative_to(pack).as_posix()}"
                with out.open(name, "w", force_zip64=True) as entry:
                    entry.write(path.read_bytes())
    assert problems(packed) == ()


def test_what_lies_beside_the_pack_is_told_once(packed):
    with zipfile.ZipFile(packed, "a") as archive:
        archive.writestr("other/x.txt", b"x")
    assert problems(packed) == ("other: lies beside the pack.",)


@pytest.mark.parametrize("name", ["claim/" + "a" * 256, "claim/" + "a/" * 600 + "x"])
def test_names_longer_than_a_disk_takes_are_refused_shortly(packed, name):
    from meterlog.model.errors import EvidenceError

    with zipfile.ZipFile(packed, "a") as archive:
        archive.writestr(name, b"x")
    with pytest.raises(EvidenceError, match="longer than most systems") as told:
        verify_pack(packed, own="")
    assert len(str(told.value)) < 700


def test_names_that_steer_a_screen_are_shown_as_numbers(pack):
    (pack / "data/\u202ecod.exe").write_bytes(b"x")
    (pack / "data/\x1b[2Jintact").write_bytes(b"x")
    told = "\n".join(problems(pack))
    assert "\\u202ecod.exe" in told
    assert "\\u001b[2Jintact" in told
    assert "\x1b" not in told
