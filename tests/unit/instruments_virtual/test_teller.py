import os
import threading

from meterlog.instruments.virtual.teller import Teller


def test_lines_come_out_in_order_and_whole():
    reading, writing = os.pipe()
    teller = Teller(writing)
    for number in range(1000):
        teller.tell(f"line {number}")
    teller.close()
    os.close(writing)
    with os.fdopen(reading) as file:
        assert file.read().splitlines() == [f"line {number}" for number in range(1000)]


def test_a_reader_that_does_not_read_holds_nobody_up():
    reading, writing = os.pipe()
    teller = Teller(writing)
    told = threading.Event()

    def tell_much():
        for _ in range(5000):
            teller.tell("x" * 100)
        told.set()

    threading.Thread(target=tell_much, daemon=True).start()
    assert told.wait(60.0)
    teller.close(0.05)
    os.close(reading)


def test_a_reader_that_has_gone_ends_the_telling_quietly():
    reading, writing = os.pipe()
    os.close(reading)
    teller = Teller(writing)
    teller.tell("to nobody")
    teller.close(10.0)
    assert not teller._thread.is_alive()
    os.close(writing)
