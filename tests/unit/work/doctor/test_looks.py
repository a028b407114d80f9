"""What the report says of a computer: each state with what to do, and nobody's name."""

import json
import os
import re
from dataclasses import replace
from pathlib import Path, PureWindowsPath

import pytest

import meterlog
from meterlog.evidence import signing
from meterlog.instruments import PortInfo
from meterlog.model.errors import DiskFailed
from meterlog.profile.folders import OWN_FOLDER
from meterlog.work.doctor import (
    Line,
    State,
    clocks,
    disks,
    files,
    gathered,
    installed,
    look_at_all,
    rights,
    whole,
    worst,
)
from meterlog.work.doctor.look import nameless, shown_place, told_of


@pytest.fixture
def home(tmp_path, monkeypatch):
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("USER", "imra")
    monkeypatch.setenv("LOGNAME", "imra")
    monkeypatch.delenv(OWN_FOLDER, raising=False)
    for name in ("CONFIG", "DATA", "CACHE"):
        monkeypatch.delenv(f"XDG_{name}_HOME", raising=False)
    return tmp_path


def said(look, about):
    return [line for line in look() if line.about == about]


def test_no_path_names_the_user(home):
    assert nameless(f"{home}/x is {home}, not {home}2") == f"~/x is ~, not {home}2"
    assert nameless("/media/imra/STICK and imra") == "/media/USER/STICK and imra"


@pytest.mark.parametrize("name", ["tmp-imra", "imra_tmp", "IMRA", "x.imra"])
def test_no_folder_in_passing_names_the_user(home, name):
    assert "imra" not in nameless(f"/scratch/{name}/x is full").casefold()


@pytest.mark.parametrize(
    ("place", "shown"),
    [
        ("/tmp", "/tmp"),
        ("/srv/WO-4711 (invented)/left/recordings", "/srv/…/recordings"),
        ("/media/imra/STICK", "/media/…"),
        ("~/.config/meterlog/profiles", "~/.config/meterlog/profiles"),
        ("~/Vantablank/recordings/jobs", "~/…/recordings/jobs"),
        ("/", "/"),
        ("~", "~"),
    ],
)
@pytest.mark.skipif(os.name != "posix", reason="paths of POSIX")
def test_of_a_place_only_is_told_what_is_called_alike_everywhere(home, place, shown):
    assert shown_place(Path(place).expanduser()) == shown


def test_the_systems_errors_name_no_file(home):
    def broken():
        raise FileNotFoundError(2, "No such file or directory", "/srv/Vantablank")
        yield

    assert "Vantablank" not in str(gathered("thing", broken))
    told = told_of(DiskFailed("is full.", subject="/srv/Vantablank", remedy="Look there."))
    assert told == "DiskFailed: is full."
    assert told_of(OSError()) == "OSError"


def test_no_share_is_told_by_its_server():
    class Share(PureWindowsPath):
        def absolute(self):
            return self

        home = staticmethod(lambda: Share("C:/Users/imra"))

    assert "vantablank" not in shown_place(Share("//vantablank-nas/kunden/recordings"))


def test_a_user_called_like_a_word_of_the_report_changes_no_word(home, monkeypatch):
    monkeypatch.setenv("LOGNAME", "linux")
    assert (
        nameless("Linux 6.1-linux-x86_64, /dev/ttyUSB0") == "Linux 6.1-linux-x86_64, /dev/ttyUSB0"
    )


def test_a_port_that_is_called_by_its_serial_number_is_told_without(monkeypatch):
    port = PortInfo("/dev/cu.usbserial-A50285BI", "an adapter", "1a2b", "3c4d", "A50285BI")
    monkeypatch.setattr(rights, "list_ports", lambda: (port,))
    assert next(rights.look_at_ports()).words.startswith("/dev/cu.usbserial-SERIAL USB 1a2b:3c4d")
    closed = replace(port, usable=False, reason=f"you may not. sudo chmod a+rw {port.device}")
    monkeypatch.setattr(rights, "list_ports", lambda: (closed,))
    assert "A50285BI" not in str(list(rights.look_at_ports()))


def test_every_file_of_settings_is_known():
    made = set()
    for file in Path(meterlog.__file__).parent.rglob("*.py"):
        made |= set(
            re.findall(
                r'^_(?:FILE|LAST) = "(.+\.json)"|KeptEntries\("(.+\.json)"',
                file.read_text("utf-8"),
                re.M,
            )
        )
    assert {one or other for one, other in made} == files._OWN


def test_a_look_that_breaks_off_is_a_line_and_the_others_go_on(home):
    def broken():
        yield Line("a", State.OK, "first")
        raise RuntimeError(f"no {home}/secret")

    assert gathered("thing", broken) == [
        Line(
            "thing",
            State.BAD,
            "could not be looked at: RuntimeError: no ~/secret",
            "Send this report to whoever keeps meterlog.",
        )
    ]


def test_the_gravest_state_counts():
    assert worst([]) is State.OK
    assert worst([Line("a", State.LOOK, ""), Line("a", State.OK, "")]) is State.LOOK
    assert worst([Line("a", State.BAD, ""), Line("a", State.LOOK, "")]) is State.BAD


def test_a_library_that_is_missing_is_bad_when_needed_and_told_when_not(monkeypatch):
    there = installed._version
    gone = {"pyserial", "hidapi"}
    monkeypatch.setattr(installed, "_version", lambda name: "" if name in gone else there(name))
    lines = list(installed.look_at_installed())
    assert [line.words for line in lines if line.state is State.BAD] == [
        "pyserial is not installed"
    ]
    assert any(line.words.startswith("hidapi is not installed") for line in lines)


def test_a_port_without_rights_is_bad_with_the_cure_and_no_serial_number(monkeypatch):
    cure = "you may not open it. On this system it belongs to the group dialout: run this."
    ports = (
        PortInfo("/dev/ttyUSB0", "an adapter", "1a2b", "3c4d", "SN700"),
        PortInfo("/dev/ttyUSB1", usable=False, reason=cure),
    )
    monkeypatch.setattr(rights, "list_ports", lambda: ports)
    lines = list(rights.look_at_ports())
    assert lines[0] == Line("port", State.OK, "/dev/ttyUSB0 USB 1a2b:3c4d, may be opened")
    assert lines[1].state is State.BAD
    assert lines[1].do == "On this system it belongs to the group dialout: run this."
    assert "SN700" not in str(lines)


@pytest.mark.skipif(os.name != "posix", reason="groups of POSIX")
@pytest.mark.parametrize(("mine", "state"), [([], State.LOOK), ([20], State.OK)])
def test_who_is_in_no_group_that_owns_ports_is_told_which(monkeypatch, mine, state):
    grp = pytest.importorskip("grp")
    group = grp.struct_group(("dialout", "x", 20, []))
    monkeypatch.setattr(grp, "getgrall", lambda: [group])
    monkeypatch.setattr(os, "geteuid", lambda: 1000)
    monkeypatch.setattr(os, "getegid", lambda: 1000)
    monkeypatch.setattr(os, "getgroups", lambda: mine)
    line = rights._group()
    assert line.state is state
    assert ("usermod -aG dialout" in line.do) is (state is State.LOOK)


@pytest.mark.parametrize(
    ("free", "state"), [(10 << 30, State.OK), (1 << 30, State.LOOK), (1 << 20, State.BAD)]
)
def test_little_space_is_told_before_it_is_gone(monkeypatch, tmp_path, free, state):
    monkeypatch.setattr(disks, "disk_free", lambda folder: free)
    lines = list(disks._folder("recordings", tmp_path / "new" / "er"))
    assert [line.state for line in lines if "GB free" in line.words] == [state]
    assert not (tmp_path / "new").exists()


def test_a_folder_that_can_not_be_written_is_bad(monkeypatch, tmp_path):
    def refuse(*_, **__):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(disks.tempfile, "NamedTemporaryFile", refuse)
    monkeypatch.setattr(disks.tempfile, "TemporaryFile", refuse)
    lines = list(disks._folder("recordings", tmp_path))
    bad = [line.words for line in lines if line.state is State.BAD]
    assert bad == [
        f"{shown_place(tmp_path)} can't be written: Permission denied",
        "the disk keeps nothing for good: Permission denied",
    ]


@pytest.mark.parametrize("deep", [".", "new", "new/er"])
def test_a_file_where_a_folder_should_be_made_is_named(tmp_path, deep):
    (tmp_path / "settings").write_text("a file")
    (line,) = disks.writable("settings", tmp_path / "settings" / deep, "Else nothing is kept.")
    assert line.state is State.BAD
    assert f"{shown_place(tmp_path / 'settings')} is no folder" in line.words
    assert line.do == "Move it out of the way. Else nothing is kept."
    assert (tmp_path / "settings").read_text() == "a file"


@pytest.mark.parametrize(
    ("kind", "state"),
    [("ext4", State.OK), ("nfs4", State.LOOK), ("vfat", State.LOOK), ("tmpfs", State.BAD)],
)
def test_the_kind_of_file_system_is_told_by_the_longest_mount(tmp_path, monkeypatch, kind, state):
    top = str(tmp_path).replace(" ", "\\040")
    mounts = tmp_path / "mounts"
    mounts.write_text(f"a / ext2 rw 0 0\nb {top} {kind} rw 0 0\nc {top}x ext2 rw 0 0\n")
    assert disks.file_system(tmp_path / "deep" / "er", mounts) == kind
    monkeypatch.setattr(disks, "file_system", lambda folder: kind)
    assert disks._kind("recordings", tmp_path).state is state


@pytest.mark.parametrize(("took", "state"), [(0.01, State.OK), (0.5, State.LOOK), (2.0, State.BAD)])
def test_a_disk_that_takes_long_to_keep_a_page_is_told(monkeypatch, tmp_path, took, state):
    now = [0.0]

    def slow(_):
        now[0] += took

    monkeypatch.setattr(disks.os, "fsync", slow)
    monkeypatch.setattr(disks.time, "perf_counter", lambda: now[0])
    line = disks._keeping("recordings", tmp_path)
    assert line.state is state
    assert f"{took * 1e3:.1f} ms" in line.words


@pytest.mark.parametrize(
    ("year", "told", "state"),
    [(2026, True, "ok"), (2026, None, "ok"), (2026, False, "look"), (1970, True, "bad")],
)
def test_a_clock_that_nobody_sets_is_told(year, told, state):
    line = clocks._wall(year, told=told)
    assert line.state.value == state
    assert bool(line.do) is (state != "ok")


def test_sleep_that_can_not_be_blocked_says_what_to_do(monkeypatch):
    class Refused:
        holds = False
        words = "sleep is not blocked: nobody allows it; switch it off"
        released = 0

        def release(self):
            Refused.released += 1

    monkeypatch.setattr(clocks, "SleepBlock", Refused)
    assert list(clocks.look_at_sleep()) == [
        Line("sleep", State.LOOK, "sleep is not blocked: nobody allows it", "Switch it off.")
    ]
    assert Refused.released == 1


def test_profiles_of_ones_own_that_are_wrong_are_counted_and_nothing_of_them_told(
    home, monkeypatch
):
    own = home / "Vantablank"
    monkeypatch.setenv(OWN_FOLDER, str(own))
    (own / "meters").mkdir(parents=True)
    (own / "meters" / "Vantablank.toml").write_text("title = 3\n")
    (own / "meters" / "b.toml").write_text("[transport]\nport = 'Vantablank'\n")
    lines = list(files.look_at_profiles())
    bad = [line for line in lines if line.state is State.BAD]
    assert [line.words for line in bad] == ["2 of meters of one's own can't be used"]
    assert "check-profile" in bad[0].do
    assert "Vantablank" not in str(lines)
    monkeypatch.setenv(OWN_FOLDER, str(home / "Vantablank" / "gone"))
    assert "names what is no folder" in next(files.look_at_profiles()).words
    assert "Vantablank" not in str(list(files.look_at_profiles()))
    assert any(line.words.startswith("12 of circuits can be used") for line in lines)


def test_settings_are_read_and_what_they_say_is_not_told(home):
    folder = home / ".config" / "meterlog"
    templates = folder / "job-templates"
    templates.mkdir(parents=True)
    (folder / "zeros.json").write_text("{}")
    assert [line.words for line in files.look_at_settings()] == ["1 files, all can be read"]
    (folder / "meters.json").write_text('["Imra Vantablank"')
    (folder / "Vantablank.json").write_text("{")
    os.mkfifo(folder / "keys.json")
    (templates / "Vantablank.json").write_text("no")
    lines = list(files.look_at_settings())
    assert [(line.state, line.words) for line in lines] == [
        (State.LOOK, "a file that is not the program's: is no JSON"),
        (State.LOOK, "keys.json: can't be read: it is a pipe or a device, not a file"),
        (State.LOOK, "meters.json: is no JSON"),
        (State.LOOK, "1 of 1 templates of job cards can't be used"),
    ]
    assert "Vantablank" not in str(lines)


@pytest.mark.skipif(os.name != "posix", reason="rights of POSIX")
def test_the_keys_state_is_told_and_nothing_of_the_key(home, monkeypatch):
    place = home / "keys"
    monkeypatch.setattr(files, "key_folder", lambda: place)
    monkeypatch.setattr(signing, "key_folder", lambda: place)
    assert [line.words for line in files.look_at_key()] == [
        "none yet; the first claim pack makes one"
    ]
    signer = signing.Signer.load_or_make(folder=place)
    lines = list(files.look_at_key())
    assert [line.words for line in lines] == ["there, yours alone, without a passphrase"]
    secret = (place / signing.KEY).read_text().splitlines()[1]
    assert secret not in str(lines)
    assert signer.fingerprint not in str(lines)
    (place / signing.KEY).chmod(0o644)
    assert [line.state for line in files.look_at_key()] == [State.BAD]
    (place / signing.KEY).chmod(0o600)
    place.chmod(0o777)
    assert [line.do for line in files.look_at_key()] == [
        f"Make it yours alone: chmod 700 {shown_place(place)}"
    ]


def test_the_whole_report_names_nobody(home, monkeypatch):
    (home / "Documents").mkdir()
    monkeypatch.setattr(whole, "LOOKS", {**whole.LOOKS, "sleep": list})
    lines = look_at_all({"screen": lambda: [Line("screen", State.OK, f"in {home}/x")]}, bench=False)
    text = json.dumps([[line.about, line.words, line.do] for line in lines])
    assert str(home) not in text
    assert "in ~/x" in text
    assert {"program", "port", "recordings", "clock", "profiles", "settings"} <= {
        line.about for line in lines
    }
    assert not [path for path in Path(home).rglob("*") if path.is_file()]
