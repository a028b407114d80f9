"""What is no file is refused at once; what is too long is not read."""

import os
import threading

import pytest

from meterlog.model.errors import MeterlogError, ProfileError, UsageError
from meterlog.profile import load_circuit, load_limits, load_meter
from meterlog.profile.plain_file import open_plain, read_plain
from meterlog.profile.toml_values import toml_values

pytestmark = pytest.mark.skipif(os.name != "posix", reason="pipes and devices of POSIX")


def test_a_plain_file_is_read_as_it_is(tmp_path):
    path = tmp_path / "a"
    path.write_bytes(b"12\r\n\xff")
    assert read_plain(path, 5) == b"12\r\n\xff"
    (tmp_path / "link").symlink_to(path)
    with open_plain(tmp_path / "link") as stream:
        assert stream.read() == b"12\r\n\xff"


def test_longer_than_meant_is_refused(tmp_path):
    (tmp_path / "a").write_bytes(bytes(2049))
    with pytest.raises(OSError, match="longer than 2 KiB"):
        read_plain(tmp_path / "a", 2048)


def test_a_pipe_is_not_waited_for(tmp_path):
    os.mkfifo(tmp_path / "a")
    said = []

    def read():
        try:
            read_plain(tmp_path / "a")
        except OSError as error:
            said.append(error.strerror)

    thread = threading.Thread(target=read, daemon=True)
    thread.start()
    thread.join(60)
    assert said == ["it is a pipe or a device, not a file"]


def test_devices_folders_and_what_is_not_there_are_told_apart(tmp_path):
    with pytest.raises(OSError, match="pipe or a device"):
        open_plain(tmp_path.joinpath("/dev/zero"))
    with pytest.raises(IsADirectoryError, match="folder"):
        open_plain(tmp_path)
    with pytest.raises(FileNotFoundError):
        open_plain(tmp_path / "gone")


def test_a_hole_of_a_terabyte_is_refused_where_the_file_system_tells_holes(tmp_path):
    path = tmp_path / "a"
    with path.open("wb") as stream:
        stream.write(b"x" * 8192)
        stream.truncate(1 << 40)
        hole = os.lseek(stream.fileno(), 0, os.SEEK_HOLE)
    if hole >= 1 << 40:
        pytest.skip("this file system tells no holes")
    with pytest.raises(OSError, match="hole of more than 1 GiB"):
        open_plain(path)


def test_a_large_file_without_a_large_hole_is_opened(tmp_path):
    path = tmp_path / "a"
    with path.open("wb") as stream:
        for place in range(0, 1200 << 20, 500 << 20):
            stream.seek(place)
            stream.write(b"x" * 8192)
        stream.truncate(1200 << 20)
    with open_plain(path) as stream:
        assert stream.read(2) == b"xx"


DOTTED = "a" + ".a" * 100_000 + " = 1"


@pytest.mark.parametrize(
    "text", [DOTTED, f"[{DOTTED[:-4]}]", "b = {" + DOTTED + "}", "a" + " . a" * 50 + " = 1"]
)
def test_a_dotted_key_of_a_hundred_thousand_names_costs_nothing(text):
    with pytest.raises(ValueError, match="more than 32 names"):
        toml_values(text)


def test_dots_of_prose_and_numbers_are_no_dotted_key():
    text = f"# {'.' * 80}\na.b.c = '{'. ' * 60}'\nd = [{'1.5, ' * 60}]\n"
    assert toml_values(text)["a"] == {"b": {"c": ". " * 60}}


@pytest.mark.parametrize("load", [load_meter, load_limits, load_circuit])
@pytest.mark.parametrize("text", [DOTTED, "a = " + "[" * 50_000, "a = " + "9" * 50_000])
def test_every_kind_of_profile_refuses_what_is_too_deep(tmp_path, load, text):
    (tmp_path / "odd.toml").write_text(text)
    with pytest.raises(ProfileError, match="is not valid TOML") as caught:
        load(str(tmp_path / "odd.toml"))
    assert caught.value.remedy
    assert len(str(caught.value)) < 4000


def test_an_error_quotes_a_megabyte_in_a_line_and_steers_no_terminal():
    error = UsageError("is " + "x" * 10**6, subject="a\x1b[31mb", remedy="one\ntwo")
    assert isinstance(error, MeterlogError)
    assert len(str(error)) < 4000
    assert "\x1b" not in str(error)
    assert "a\\x1b[31mb" in str(error)
    assert str(error).endswith("one\ntwo")
    assert len(str(UsageError("\x06" * 10**5))) < 2000
