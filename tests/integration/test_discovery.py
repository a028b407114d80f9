"""Finding meters on real pseudo terminals: what is answered, what is sent, what is left alone.

The devices here are invented; each notes every byte that it is sent.
"""

import contextlib
import os
import select
import struct
import threading
import time
import tty
from dataclasses import replace

import pytest

from meterlog.acquire import Discovery, Outcome, ask_ports
from meterlog.instruments import PortInfo, open_link
from meterlog.model.errors import LinkBusy
from meterlog.profile import LinkSettings, MeterProfile, Recognition, load_meter, names

pytestmark = pytest.mark.pty

SCPI = [load_meter(name) for name in ("bench-scpi", "bench-scpi-2ch")]
SHIPPED = [load_meter(name) for name in names("meters")]
# 12.34 V DC auto; -0.567 A DC auto (the segment table, references from memory).
VOLT_FRAME = bytes.fromhex("17 20 35 45 5B 69 7F 82 97 A0 B0 C0 D4 E0")
AMP_FRAME = bytes.fromhex("17 2F 3D 4B 5E 67 7E 81 95 A0 B0 C0 D8 E0")


class Device(threading.Thread):
    """The far end of a pseudo terminal.

    Parameters
    ----------
    reply : callable
        Gives what is answered to all that has come in since the last answer; empty to wait on.
    says : bytes
        Sent again and again by itself.
    every_s : float
    """

    def __init__(self, reply=lambda _: b"", says=b"", every_s=0.02):
        super().__init__(name="device", daemon=True)
        self._far, self._near = os.openpty()
        tty.setraw(self._near)
        self.port = os.ttyname(self._near)
        self.heard = b""
        self._reply, self._says, self._every_s = reply, says, every_s
        self._over = threading.Event()
        self.start()

    def run(self):
        begun = b""
        due_s = time.monotonic()
        while not self._over.is_set():
            ready, _, _ = select.select([self._far], [], [], 0.01)
            if ready:
                data = os.read(self._far, 4096)
                self.heard += data
                begun += data
                answer = self._reply(begun)
                if answer:
                    begun = b""
                    os.write(self._far, answer)
            if self._says and time.monotonic() >= due_s:
                due_s = time.monotonic() + self._every_s
                os.set_blocking(self._far, False)
                with contextlib.suppress(BlockingIOError):
                    os.write(self._far, self._says)

    def close(self):
        self._over.set()
        self.join(60)
        os.close(self._near)
        os.close(self._far)


@pytest.fixture
def device():
    made = []

    def make(*words, **more):
        made.append(Device(*words, **more))
        return made[-1]

    yield make
    for one in made:
        one.close()


def scpi(identity="INVENTED,MODEL 1,SN7,1.0", **answers):
    """A SCPI instrument that knows *IDN? and what is given; it is silent to all else."""
    known = {"*IDN?": identity, **{key.upper() + "?": value for key, value in answers.items()}}

    def reply(heard):
        if not heard.endswith(b"\n"):
            return b""
        words = heard.decode("latin-1").strip().split("\n")[-1]
        answer = known.get(words, "")
        return answer if isinstance(answer, bytes) else (answer + "\r\n").encode() * bool(answer)

    return reply


def crc(frame):
    """CRC-16 of Modbus over Serial Line V1.02, 6.2.2: polynomial A001h, from FFFFh."""
    value = 0xFFFF
    for byte in frame:
        value ^= byte
        for _ in range(8):
            value = (value >> 1) ^ (0xA001 if value & 1 else 0)
    return struct.pack("<H", value)


def modbus(registers, device=1):
    """A Modbus device whose register k of every table reads ``registers[k]``; else exception 02."""

    def reply(heard):
        for start in range(len(heard) - 7):
            frame = heard[start : start + 8]
            if frame[0] == device and frame[1] in {3, 4} and crc(frame[:6]) == frame[6:]:
                at, count = struct.unpack(">HH", frame[2:6])
                if at + count > len(registers):
                    body = bytes((device, frame[1] | 0x80, 2))
                else:
                    words = struct.pack(f">{count}H", *registers[at : at + count])
                    body = bytes((device, frame[1], 2 * count)) + words
                return body + crc(body)
        return b""

    return reply


def asked(*devices, profiles=SHIPPED, **more):
    ports = [PortInfo(one.port, **more) for one in devices]
    answers = ask_ports(ports, profiles)
    return answers[0] if len(devices) == 1 else answers


def fits(answer):
    return [fit.profile for fit in answer.fits]


def test_a_line_logger_is_told_by_its_columns_and_is_sent_nothing(device):
    logger = device(says=b"12.431,0.872,4.950\r\n")
    answer = asked(logger)
    assert (answer.outcome, fits(answer)) == (Outcome.FITS, ["line-logger"])
    assert answer.fits[0].words == "12.431 V, 0.872 V, 4.950 A"
    assert "3 columns" in answer.fits[0].why
    assert logger.heard == b""
    assert answer.took_s < 1.0


def test_a_logger_with_its_own_clock_is_another_profile(device):
    assert fits(asked(device(says=b"183460,12.431,0.872,4.950\n"))) == ["line-logger-timed"]


def test_a_scpi_meter_is_sent_idn_and_one_query_and_nothing_else(device):
    meter = device(scpi(read="+1.243100E+01"))
    answer = asked(meter)
    assert fits(answer) == ["bench-scpi"]
    assert answer.fits[0].words == "12.4310 V"
    assert (answer.identity.maker, answer.identity.serial) == ("INVENTED", "SN7")
    assert answer.who == "INVENTED MODEL 1 SN7"
    assert meter.heard == b"*IDN?\nREAD?\n"
    assert not answer.simulated


def test_two_values_in_an_answer_are_another_profile_than_one(device):
    meter = device(scpi(read="+1.2431E+01,+4.95E+00"))
    answer = asked(meter)
    assert fits(answer) == ["bench-scpi-2ch"]
    assert answer.fits[0].words == "12.4310 V, 4.9500 A"


def test_overload_is_told_in_a_word(device):
    assert asked(device(scpi(read="9.9E37")), profiles=SCPI).fits[0].words == "overload"


def test_a_meter_that_is_not_set_to_measure_is_named_without_a_reading(device):
    answer = asked(device(scpi()), profiles=[load_meter("bench-scpi")])
    assert fits(answer) == ["bench-scpi"]
    assert answer.fits[0].values == ()
    assert "does not answer READ?" in answer.fits[0].note


def test_an_instrument_that_answers_something_else_is_unknown_with_its_name(device):
    answer = asked(device(scpi(read="VOLTAGE", fetc="VOLTAGE")), profiles=SCPI)
    assert answer.outcome is Outcome.UNKNOWN
    assert answer.who == "INVENTED MODEL 1 SN7"
    assert "INVENTED MODEL 1, but no profile fits" in answer.reason


@pytest.mark.parametrize(
    ("frame", "profile", "words"),
    [(VOLT_FRAME, "hand-meter", "12.34 V"), (AMP_FRAME, "hand-meter-amps", "-0.567 A")],
)
def test_a_hand_held_meter_is_told_by_the_unit_it_shows(device, frame, profile, words):
    meter = device(says=frame, every_s=0.3)
    answer = asked(meter)
    assert fits(answer) == [profile]
    assert answer.fits[0].words == words
    assert meter.heard == b""


def test_a_block_instrument_is_told_by_its_rows(device):
    profile = next(p for p in SHIPPED if p.name == "block-daq")
    rows = struct.pack(">6h", *(round(value / 0.001) for value in (12, 1, 5, 12, 1, 5)))
    block = b"#2%02d" % len(rows) + rows + b"\n"
    if profile.blocks.byte_order == "swapped":
        block = block[:4] + struct.pack("<6h", *struct.unpack(">6h", rows)) + b"\n"
    query = profile.scpi.query.rstrip("?").lower()
    answer = asked(device(scpi(**{query: block})), profiles=[profile])
    assert fits(answer) == ["block-daq"]
    volts, back, amps = (value.value for value in answer.fits[0].values)
    scales = [channel.scale for channel in profile.channels]
    assert (volts, back, amps) == pytest.approx(
        (12000 * scales[0], 1000 * scales[1], 5000 * scales[2])
    )


def test_a_modbus_device_is_read_and_only_read(device):
    meter = device(modbus([0] * 64))
    answer = asked(meter)
    assert fits(answer) == ["panel-meter"]
    assert [value.value for value in answer.fits[0].values] == [0.0, 0.0]
    sent = meter.heard.removeprefix(b"*IDN?\n")
    functions = []
    while sent:
        functions.append(sent[1])
        size = 7 if sent[1] == 43 else 8
        assert crc(sent[: size - 2]) == sent[size - 2 : size]
        sent = sent[size:]
    assert 43 in functions
    assert set(functions) <= {3, 4, 43}


def test_a_modbus_device_without_these_registers_says_why(device):
    answer = asked(device(modbus([])), profiles=[load_meter("panel-meter")])
    assert answer.outcome is Outcome.UNKNOWN
    assert "illegal data address" in answer.reason


def test_a_silent_port_says_what_to_check(device):
    answer = asked(device())
    assert (answer.outcome, answer.fits) == (Outcome.SILENT, ())
    for words in ("nothing was heard", "is on", "cable"):
        assert words in answer.reason


def test_text_that_no_profile_reads_is_shown(device):
    answer = asked(device(says=b"T=21.5;H=40\r\n"))
    assert answer.outcome is Outcome.UNKNOWN
    assert "'T=21.5;H=40'" in answer.reason


@pytest.mark.calm(0.02)
def test_bytes_that_nothing_understands_are_told_and_are_not_asked(device):
    talker = device(says=bytes((0x80, 0xFF, 0x00, 0xC1)), every_s=0.02)
    answer = asked(talker)
    assert answer.outcome is Outcome.GARBLED
    assert "80 ff 00 c1" in answer.reason
    assert talker.heard == b""


def test_an_echo_is_not_taken_for_an_instrument(device):
    answer = asked(device(reply=lambda heard: heard), profiles=SCPI)
    assert answer.outcome is not Outcome.FITS
    assert "comes back" in answer.reason


def test_a_console_that_answers_anything_is_not_taken_for_an_instrument(device):
    def reply(heard):
        return b"ERROR\r\n" if heard.endswith(b"\n") else b""

    console = device(reply)
    answer = asked(console, profiles=SCPI)
    assert answer.outcome is Outcome.UNKNOWN
    assert "'ERROR'" in answer.reason
    assert b"READ?" not in console.heard


def test_a_port_that_was_not_included_is_neither_opened_nor_sent_to(device):
    included, left = device(scpi(read="1.0")), device(scpi(read="1.0"))
    opened = []

    def opener(url, settings):
        opened.append(url)
        return open_link(url, settings)

    ask_ports([PortInfo(included.port)], SHIPPED, opener=opener)
    assert set(opened) == {included.port}
    assert included.heard
    assert left.heard == b""


def test_a_port_that_another_holds_is_busy_and_the_other_is_not_disturbed(device):
    meter = device(scpi(read="1.0"))
    with open_link(meter.port, LinkSettings()):
        answer = asked(meter, profiles=SCPI)
        assert answer.outcome is Outcome.CLOSED
        assert "another program" in answer.reason
        assert meter.heard == b""


def test_every_port_is_closed_afterwards(device):
    found, silent = device(scpi(read="1.0")), device()
    asked(found, silent, profiles=SCPI)
    for one in (found, silent):
        open_link(one.port, LinkSettings()).close()


def test_many_ports_take_no_longer_than_one(device):
    meters = [device() for _ in range(5)]
    start_s = time.monotonic()
    answers = asked(*meters, profiles=SCPI)
    took_s = time.monotonic() - start_s
    assert [answer.port for answer in answers] == [one.port for one in meters]
    assert took_s < 1.7 * max(answer.took_s for answer in answers)


def test_it_can_be_stopped_and_then_has_closed_everything(device):
    meters = [device() for _ in range(3)]
    discovery = Discovery([PortInfo(one.port) for one in meters], SHIPPED)
    discovery.start()
    while any(one.doing == "waiting" for one in discovery.progress()):
        time.sleep(0.01)
    discovery.cancel()
    assert discovery.wait(1.5)
    answers = [one.answer for one in discovery.progress()]
    assert {answer.outcome for answer in answers} == {Outcome.STOPPED}
    for one in meters:
        assert one.heard == b""
        try:
            open_link(one.port, LinkSettings()).close()
        except LinkBusy:
            pytest.fail("still open")


def own(name: str, like: str, **recognition) -> MeterProfile:
    return replace(load_meter(like), name=name, recognition=Recognition(**recognition))


def test_what_can_not_be_told_apart_is_given_in_the_order_of_the_profiles(device):
    mine = own("mine", "line-logger")
    answer = asked(device(says=b"1.0,2.0,3.0\n"), profiles=[mine, *SHIPPED])
    assert fits(answer) == ["mine", "line-logger"]


def test_a_profile_that_names_the_adapter_comes_first(device):
    mine = own("mine", "line-logger", usb=("1a2b:3c4d",))
    logger = device(says=b"1.0,2.0,3.0\n")
    answer = asked(logger, profiles=[*SHIPPED, mine], vendor="1a2b", product="3c4d")
    assert fits(answer) == ["mine", "line-logger"]
    answer = asked(logger, profiles=[mine, *SHIPPED], vendor="1a2b", product="0000")
    assert fits(answer) == ["line-logger", "mine"]


def test_a_profile_that_names_the_model_comes_first_and_one_for_another_does_not_come(device):
    mine = own("mine", "bench-scpi", maker="^invented$", model="MODEL 1")
    other = own("other", "bench-scpi", model="MODEL 2")
    answer = asked(device(scpi(read="1.0")), profiles=[*SCPI, other, mine])
    assert fits(answer) == ["mine", "bench-scpi"]


def test_a_query_that_would_change_what_is_measured_is_not_sent(device):
    base = own("mine", "bench-scpi", model="MODEL 1")
    mine = replace(base, scpi=replace(base.scpi, query="MEAS:VOLT:DC?"))
    meter = device(scpi())
    answer = asked(meter, profiles=[mine])
    assert fits(answer) == ["mine"]
    assert answer.fits[0].values == ()
    assert "MEAS:VOLT:DC?" in answer.fits[0].note
    assert meter.heard == b"*IDN?\n"


def test_a_logger_too_slow_for_the_first_look_is_found_by_listening_longer(device):
    base = own("slow", "line-logger")
    slow = replace(base, interval_s=0.9)
    answer = asked(device(says=b"1.0,2.0,3.0\n", every_s=1.5), profiles=[slow])
    assert fits(answer) == ["slow"]
    assert answer.took_s > 1.0


def test_a_virtual_meter_is_told_as_such(device):
    words = b"# VIRTUAL BENCH, invented readings\r\n1.0,2.0,3.0\r\n"
    assert asked(device(says=words)).simulated
    assert asked(device(scpi("VIRTUAL,m,1,1", read="1.0")), profiles=SCPI).simulated
