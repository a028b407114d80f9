"""What a port's failure is called, also on systems that this test does not run on."""

import errno
import grp
import os
import socket
import subprocess
import sys
import termios
from types import SimpleNamespace

import pytest
from serial import SerialException

from meterlog.instruments import port_rights
from meterlog.instruments.link_errors import lost, open_failed
from meterlog.model.errors import LinkBusy, LinkNotFound, LinkRefused


def windows_error(text: str) -> SerialException:
    return SerialException(f"could not open port 'COM7': {text}")


@pytest.mark.parametrize(
    ("error", "kind"),
    [
        (SerialException(errno.ENOENT, "no such file"), LinkNotFound),
        (SerialException(errno.EAGAIN, "locked"), LinkBusy),
        (SerialException(errno.EBUSY, "busy"), LinkBusy),
        (SerialException(errno.EACCES, "denied"), LinkRefused),
        (windows_error("FileNotFoundError(2, 'not found', None, 2)"), LinkNotFound),
        (windows_error("PermissionError(13, 'Access is denied.', None, 5)"), LinkBusy),
        (SerialException("something new"), LinkRefused),
    ],
)
def test_each_failure_has_its_kind_and_names_the_port(error, kind):
    made = open_failed("PORT7", error)
    assert type(made) is kind
    assert made.subject == "PORT7"
    assert made.remedy


def test_a_missing_right_names_the_group_that_owns_the_port_and_the_command(tmp_path, monkeypatch):
    device = tmp_path / "port"
    device.touch()
    device.chmod(0o660)
    group = SimpleNamespace(gr_name="plugdev")
    monkeypatch.setattr(grp, "getgrgid", lambda number: group if number == 46 else None)
    real = device.stat()
    owned = os.stat_result((*real[:5], 46, *real[6:]))
    monkeypatch.setattr(port_rights.Path, "stat", lambda _self: owned)
    made = open_failed(str(device), SerialException(errno.EACCES, "denied"))
    assert "belongs to the group plugdev" in made.remedy
    assert "sudo usermod -aG plugdev $USER" in made.remedy
    assert "log out and in" in made.remedy


def test_a_port_that_can_not_be_looked_at_names_the_usual_group():
    made = open_failed("/dev/no-such-port", SerialException(errno.EACCES, "denied"))
    assert "sudo usermod -aG dialout $USER" in made.remedy


def test_a_port_of_root_alone_does_not_send_the_user_to_a_group(tmp_path):
    device = tmp_path / "port"
    device.touch()
    device.chmod(0o600)
    made = open_failed(str(device), SerialException(errno.EACCES, "denied"))
    assert "root alone" in made.remedy
    assert "usermod" not in made.remedy


def test_a_busy_port_names_the_program_that_has_it_open(tmp_path):
    device = tmp_path / "port"
    device.touch()
    code = "import sys, time; h = open(sys.argv[1]); print('open', flush=True); time.sleep(60)"
    with subprocess.Popen(
        [sys.executable, "-c", code, str(device)], stdout=subprocess.PIPE, text=True
    ) as other:
        assert other.stdout.readline() == "open\n"
        made = open_failed(str(device), SerialException(errno.EBUSY, "locked"))
        other.kill()
    assert type(made) is LinkBusy
    assert f"(process {other.pid})" in made.message
    assert made.remedy


@pytest.mark.parametrize(
    ("cause", "kind"),
    [
        (ConnectionRefusedError(errno.ECONNREFUSED, "refused"), LinkRefused),
        (socket.gaierror(-2, "unknown"), LinkNotFound),
        (TimeoutError("timed out"), LinkNotFound),
        (OSError(errno.ENETUNREACH, "unreachable"), LinkNotFound),
        (TypeError("no port number"), LinkNotFound),
    ],
)
def test_a_network_failure_is_told_by_its_cause(cause, kind):
    # pyserial raises its own error while it handles the cause, and keeps no number.
    wrapped = SerialException("Could not open port")
    wrapped.__context__ = cause
    made = open_failed("socket://meter.invalid:5025", wrapped)
    assert type(made) is kind


def test_a_lost_port_is_named_with_what_to_check():
    said = str(lost("/dev/ttyUSB0", SerialException("read failed")))
    assert said.startswith("/dev/ttyUSB0: ")
    assert "read failed" in said
    assert "cable" in said


@pytest.mark.parametrize(
    ("error", "reason"),
    [
        (OSError(errno.ENODEV, "the device has hung up"), "the device has hung up"),
        (OSError(errno.EIO, "Input/output error", "/dev/ttyUSB0"), "Input/output error"),
        (SerialException("read failed: [Errno 5] Input/output error"),
         "read failed: Input/output error"),
        (termios.error(errno.EIO, "Input/output error"), "Input/output error"),
        (ConnectionResetError(), "ConnectionResetError"),
    ],
)  # fmt: skip
def test_a_lost_port_is_told_in_words_without_the_number_of_the_system(error, reason):
    assert lost("/dev/ttyUSB0", error).message == f"the port went away ({reason})."
