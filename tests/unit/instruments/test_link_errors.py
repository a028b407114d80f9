"""What a port's failure is called, also on systems that this test does not run on."""

import errno
import socket

import pytest
from serial import SerialException

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


def test_a_missing_right_names_the_group_and_the_command():
    made = open_failed("/dev/ttyUSB0", SerialException(errno.EACCES, "denied"))
    assert "dialout" in made.remedy
    assert "sudo usermod -aG dialout $USER" in made.remedy


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
