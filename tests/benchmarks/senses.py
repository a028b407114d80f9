"""Figures of the senses: from the port to the recorder's file."""

from __future__ import annotations

import os
import pty
import subprocess
import sys
import tempfile
import time
import tty
from dataclasses import replace
from pathlib import Path

import numpy as np
import pyarrow as pa
import pyarrow.csv
import serial
from figure import Figure, interleaved_s, percentile
from traces import about

from meterlog.acquire import NO_HURRY_NS, Acquisition, Bus, Clock, MeterChoice
from meterlog.instruments import AsciiLineDecoder, BlockDecoder
from meterlog.model import Block
from meterlog.profile import load_meter
from meterlog.recording import Recorder

LINE = b"12.431,0.872,13.605\n"
MEGABYTES = 16


def _pty() -> tuple[int, str, int]:
    ours, theirs = pty.openpty()
    tty.setraw(theirs)
    return ours, os.ttyname(theirs), theirs


def _writer(ours: int, total: int) -> subprocess.Popen[bytes]:
    """Write ``total`` bytes of lines from a second process as fast as they are taken."""
    code = (
        "import os,sys\n"
        "fd,total=int(sys.argv[1]),int(sys.argv[2])\n"
        f"data={LINE!r}*3000\n"
        "while total>0:\n"
        "    part=memoryview(data)[:total]\n"
        "    while part:\n"
        "        n=os.write(fd,part); part=part[n:]; total-=n\n"
    )
    command = [sys.executable, "-c", code, str(ours), str(total)]
    return subprocess.Popen(command, pass_fds=[ours])


def _into_nothing(total: int) -> float:
    ours, name, theirs = _pty()
    port = serial.serial_for_url(name, timeout=1)
    writer, got, start = _writer(ours, total), 0, 0.0
    while got < total:
        data = port.read(port.in_waiting or 1)
        if not data:
            raise RuntimeError("bytes were lost on a bare pty: is another program reading it?")
        got += len(data)
        start = start or time.perf_counter()
    seconds = time.perf_counter() - start
    writer.wait()
    port.close()
    os.close(ours)
    os.close(theirs)
    return seconds


def _into_recorder(total: int, folder: Path) -> tuple[float, float, int]:
    """Give wall seconds, processor seconds and rows kept: reader, bus and recorder as they run."""
    profile = load_meter("line-logger")
    ours, name, theirs = _pty()
    recorder = Recorder.create(folder, about(0.02), keep_raw=False)
    clock = Clock.start()
    bus = Bus([recorder], clock)
    acquisition = Acquisition([MeterChoice(profile, name, "meter", profile.channels)], clock)
    acquisition.connect()
    bus.start()
    acquisition.start(bus.put)
    os.write(ours, b"\n")  # ends the half line that a reader expects after opening
    rows = total // len(LINE)
    writer = _writer(ours, total)
    begun = time.perf_counter()
    while not acquisition.state()[0].readings:
        time.sleep(0.0002)
    used, start = time.process_time(), time.perf_counter()
    while acquisition.state()[0].readings < rows and time.perf_counter() - begun < 60.0:
        time.sleep(0.002)
    acquisition.stop()
    bus.stop()
    seconds, used = time.perf_counter() - start, time.process_time() - used
    recorder.close()
    writer.wait()
    os.close(ours)
    os.close(theirs)
    return seconds, used, recorder.rows["meter"]


def throughput() -> tuple[Figure, Figure]:
    """Sustained bytes through link, decoder and recorder, nothing lost."""
    total = MEGABYTES * 1_000_000 // len(LINE) * len(LINE)
    walls, cpu, plain = [], [], []
    with tempfile.TemporaryDirectory() as place:
        for turn in range(3):
            seconds, used, rows = _into_recorder(total, Path(place) / str(turn))
            if rows != total // len(LINE):
                raise RuntimeError(f"{total // len(LINE) - rows} readings lost")
            walls.append(seconds)
            cpu.append(used)
            plain.append(_into_nothing(total))
    seconds, plain_s = sorted(walls)[1], sorted(plain)[1]
    per_megabyte = sorted(cpu)[1] / (total / 1e6)
    return (
        Figure(
            "senses",
            f"ASCII lines through link, decoder, recorder ({MEGABYTES} MB, none lost)",
            f"{total / seconds / 1e6:.1f} MB/s",
            f"pyserial into nothing {total / plain_s / 1e6:.1f} MB/s",
            plain_s / seconds,
            ">= 0.8x and >= 1 MB/s",
            plain_s / seconds >= 0.8 and total / seconds >= 1e6,
        ),
        Figure(
            "senses",
            "processor at 1 MB/s of ASCII lines",
            f"{per_megabyte * 100:.1f} % of a core",
            "one core",
            per_megabyte,
            "<= 60 %",
            per_megabyte <= 0.6,
        ),
    )


def batch_decode() -> Figure:
    """Batch decoding of lines against pyarrow's CSV reader on one thread."""
    profile = load_meter("line-logger")
    data = b"".join(
        b"12.%03d,0.%03d,13.%03d\n" % (i % 999, i % 777, i % 888) for i in range(200_000)
    )
    read = pyarrow.csv.ReadOptions(
        use_threads=False, column_names=["feed", "return", "current"], block_size=1 << 24
    )

    def ours() -> None:
        decoder = AsciiLineDecoder(profile.lines, profile.channels)
        decoder.feed(data)

    seconds, arrow_s = interleaved_s(
        ours, lambda: pyarrow.csv.read_csv(pa.BufferReader(data), read_options=read)
    )
    return Figure(
        "senses",
        "batch ASCII decode, 200,000 lines",
        f"{len(data) / seconds / 1e6:.0f} MB/s",
        f"pyarrow.csv {len(data) / arrow_s / 1e6:.0f} MB/s",
        arrow_s / seconds,
        ">= 0.7x",
        arrow_s / seconds >= 0.7,
    )


def block_decode() -> Figure:
    """Decoding of a block of 999,999 samples against numpy's own reading of them.

    Into the same shape: 64 bits, a column a channel.
    """
    profile = load_meter("block-daq-float")
    width = len(profile.channels)
    payload = (np.arange(999_999) % 1_000).astype("<f4").tobytes()
    block = b"#7%07d" % len(payload) + payload + b"\n"
    decoder = BlockDecoder(replace(profile.blocks, sample_s=0.0), profile.channels)

    def numpys() -> None:
        np.frombuffer(payload, "<f4").reshape(-1, width).astype(float, order="F")

    seconds, numpy_s = interleaved_s(lambda: decoder.feed(block), numpys, repeats=25)
    return Figure(
        "senses",
        "binary block decode, 999,999 samples of 32 bits",
        f"{len(payload) / seconds / 1e6:.0f} MB/s",
        f"numpy.frombuffer + copy {len(payload) / numpy_s / 1e6:.0f} MB/s",
        numpy_s / seconds,
        ">= 0.5x",
        numpy_s / seconds >= 0.5,
    )


class _Watch:
    """Last sink of the bus: when was each reading taken, when was it on the disk."""

    def __init__(self, recorder: Recorder) -> None:
        self.recorder = recorder
        self.taken: dict[int, int] = {}
        self.kept: dict[int, int] = {}
        self._order: list[int] = []

    def take(self, item) -> None:
        now = time.monotonic_ns()
        if isinstance(item, Block):
            for value in item.values[:, 0]:
                self.taken[round(value)] = now
                self._order.append(round(value))
        self.tick(0)

    def rest_ns(self, _now_ns: int) -> int:
        return NO_HURRY_NS

    def tick(self, _now_ns: int) -> None:
        now = time.monotonic_ns()
        for number in self._order[len(self.kept) : self.recorder.rows["line-logger"]]:
            self.kept[number] = now


def _bare_latencies(count: int) -> list[float]:
    """How long a line takes through a pty alone."""
    ours, name, theirs = _pty()
    port = serial.serial_for_url(name, timeout=1)
    latencies = []
    for _ in range(count):
        sent = time.monotonic_ns()
        os.write(ours, LINE)
        got = b""
        while not got.endswith(b"\n"):
            more = port.read(port.in_waiting or 1)
            if not more:
                raise RuntimeError("a line was lost on a bare pty: is another program reading it?")
            got += more
        latencies.append((time.monotonic_ns() - sent) / 1e6)
        time.sleep(0.002)
    port.close()
    os.close(ours)
    os.close(theirs)
    return latencies


def latency() -> tuple[Figure, Figure]:
    """From the write of a line to the bus's last sink, and to the recorder's file."""
    from meterlog.model import About

    count = 500
    profile = load_meter("line-logger")
    ours, name, theirs = _pty()
    clock = Clock.start()
    choice = MeterChoice(profile, name, "line-logger", profile.channels)
    acquisition = Acquisition([choice], clock)
    sent: dict[int, int] = {}
    with tempfile.TemporaryDirectory() as place:
        instruments = acquisition.connect()
        head = about(0.02)
        head = About(
            head.recording_id,
            clock.started_utc,
            0,
            clock.zero_ns,
            "benchmark",
            head.origin,
            instruments,
        )
        recorder = Recorder.create(Path(place) / "run", head)
        watch = _Watch(recorder)
        bus = Bus([recorder, watch], clock)
        bus.start()
        acquisition.start(bus.put)
        time.sleep(0.2)
        os.write(ours, b"\n")  # ends the half line that a reader expects after opening
        for number in range(1, count + 1):
            sent[number] = time.monotonic_ns()
            os.write(ours, b"%d.0,0.5,13.6\n" % number)
            time.sleep(0.01)
        time.sleep(0.3)
        acquisition.stop()
        bus.stop()
        recorder.close()
    os.close(ours)
    os.close(theirs)
    if len(watch.kept) != count:
        raise RuntimeError(f"{count - len(watch.kept)} readings lost")
    taken = [(watch.taken[n] - sent[n]) / 1e6 for n in sent]
    kept = [(watch.kept[n] - sent[n]) / 1e6 for n in sent]
    bare = percentile(_bare_latencies(count), 0.99)
    added = percentile(taken, 0.99) - bare
    on_disk = percentile(kept, 0.99)
    return (
        Figure(
            "senses",
            "reading leaves the meter -> recorder has it, added p99",
            f"{added:.2f} ms (median {percentile(taken, 0.5):.2f} ms)",
            f"pty alone p99 {bare:.2f} ms",
            None,
            "<= 5 ms",
            added <= 5.0,
        ),
        Figure(
            "senses",
            "reading leaves the meter -> in the file, p99",
            f"{on_disk:.0f} ms",
            "flush every 100 ms",
            None,
            "<= 100 ms",
            on_disk <= 100.0,
        ),
    )


FIGURES = (latency, throughput, batch_decode, block_decode)
