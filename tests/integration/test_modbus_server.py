"""ModbusDecoder against the server of an independent library, byte for byte over a real pty.

Source: pymodbus' serial server (the requests are checked by its parser, the answers are made by
its encoder). Values and registers are invented.
"""

import asyncio
import os
import pty
import select
import threading
import time
import tty

import pytest
from pymodbus.server import ModbusSerialServer
from pymodbus.simulator import DataType, SimData, SimDevice

from meterlog.instruments import ModbusDecoder, ModbusRequests, Readings
from meterlog.model import Channel, Flag, Quantity
from meterlog.profile import ModbusTalk, Register

pytestmark = pytest.mark.pty
PATIENCE_S = 10.0
HOLDING = [
    SimData(0, values=[-5, 1243], datatype=DataType.INT16),
    SimData(2, values=[65_531], datatype=DataType.UINT16),
    SimData(3, values=[12.5, -0.25], datatype=DataType.FLOAT32),
    SimData(200, values=[-70_000], datatype=DataType.INT32),
    SimData(202, values=[70_000], datatype=DataType.UINT32),
    SimData(1000, values=list(range(130)), datatype=DataType.INT16),
]
INPUT = [SimData(8, values=[10], datatype=DataType.INT16)]
NOTHING = [SimData(0, values=[False], datatype=DataType.BITS)]


class Server:
    """A Modbus device in a thread of its own, at the far end of a pty."""

    def __init__(self) -> None:
        self.line, far = pty.openpty()
        tty.setraw(far)
        self._far = far
        self._name = os.ttyname(far)
        self._loop = asyncio.new_event_loop()
        self._ready = threading.Event()
        self._thread = threading.Thread(target=self._run)
        self._thread.start()
        assert self._ready.wait(PATIENCE_S)

    def _run(self) -> None:
        asyncio.set_event_loop(self._loop)
        self._loop.run_until_complete(self._serve())
        self._loop.close()

    async def _serve(self) -> None:
        device = SimDevice(17, simdata=(NOTHING, NOTHING, HOLDING, INPUT))
        self._server = ModbusSerialServer(device, port=self._name, baudrate=115_200)
        await self._server.serve_forever(background=True)
        self._done = asyncio.Event()
        self._ready.set()
        await self._done.wait()
        await self._server.shutdown()

    def stop(self) -> None:
        self._loop.call_soon_threadsafe(self._done.set)
        self._thread.join(PATIENCE_S)
        os.close(self.line)
        os.close(self._far)


@pytest.fixture(scope="module")
def server():
    one = Server()
    yield one
    one.stop()


def ask(server: Server, function: int, *registers: Register, device: int = 17, order="high-first"):
    """Ask for one row and give its readings and the decoder."""
    talk = ModbusTalk(device, function, order, registers)
    channels = tuple(Channel(f"c{at}", Quantity.VOLTAGE) for at in range(len(registers)))
    decoder = ModbusDecoder(talk, channels)
    readings: Readings | None = None
    for index, frame in enumerate(ModbusRequests(talk).frames):
        decoder.expect(index)
        os.write(server.line, frame)
        until = time.monotonic() + PATIENCE_S
        while decoder.complete_answers == index:
            assert time.monotonic() < until, "no answer"
            if select.select([server.line], [], [], 0.1)[0]:
                readings = decoder.feed(os.read(server.line, 4_096))
    assert decoder.refused == 0
    return readings


def test_every_form_of_number_comes_over_as_it_stands_in_the_device(server):
    readings = ask(
        server,
        3,
        Register(0),
        Register(1),
        Register(2, "uint16"),
        Register(3, "float32"),
        Register(5, "float32"),
        Register(200, "int32"),
        Register(202, "uint32"),
    )
    assert readings.values.tolist() == [[-5.0, 1243.0, 65_531.0, 12.5, -0.25, -70_000.0, 70_000.0]]


def test_input_registers_are_another_table_than_holding_registers(server):
    assert ask(server, 4, Register(8)).values.tolist() == [[10.0]]


def test_more_registers_than_one_answer_holds_make_one_row(server):
    readings = ask(server, 3, *(Register(1000 + place) for place in range(130)))
    assert readings.values.tolist() == [[float(place) for place in range(130)]]


def test_a_register_that_is_not_there_is_an_exception_of_the_device_and_leaves_the_rest(server):
    readings = ask(server, 3, Register(1), Register(500))
    assert readings.flags.tolist() == [[0, int(Flag.NO_DATA)]]
    assert readings.values[0, 0] == 1243.0
    (remark,) = readings.remarks
    assert remark.text == "register 500: exception 02, illegal data address"


def test_the_wrong_word_order_is_seen_to_be_wrong(server):
    right = ask(server, 3, Register(3, "float32"))
    wrong = ask(server, 3, Register(3, "float32"), order="low-first")
    assert right.values.tolist() == [[12.5]]
    assert wrong.values.tolist() != [[12.5]]
