"""Long run against every reader of files: ``python tests/fuzz/files.py [--seconds N] [name ...]``.

Each case edits a valid file (``edits.py``) and gives it to its reader (``readers.py``). It is
checked that the reader answers or refuses by a MeterlogError that says what, where and what to do,
within its time and within bounded memory, that nothing outside the folder is opened, and that no
program is started. ``--special`` gives each what is no file: pipes, devices, folders, loops, holes.
The same seed gives the same cases.
"""

from __future__ import annotations

import argparse
import contextlib
import os
import resource
import shutil
import signal
import sys
import tempfile
import time
import traceback
import warnings
from collections.abc import Callable, Iterator
from pathlib import Path

from hypothesis import HealthCheck, Phase, given, seed, settings
from hypothesis import strategies as st
from readers import Reader, readers
from samples import make_samples

from meterlog.model.errors import MeterlogError

MOST_BYTES = 1 << 30
"""By how much one case may make the process larger."""
BATCH = 200
NUMBER = st.integers(0, 2**20)
EDITS = st.lists(st.tuples(NUMBER, NUMBER, NUMBER), min_size=1, max_size=6)
_WRITES = os.O_WRONLY | os.O_RDWR | os.O_CREAT


_WAITS = 4
"""A pipe costs no computing; on a busy computer everything takes longer."""


class Slow(BaseException):
    """A reader took longer than it may."""


class Wrong(Exception):
    """A reader did what it must not."""


_PROJECT = str(Path(__file__).resolve().parents[2])


class Watch:
    """What a reader opens and starts, by Python's own audit events."""

    def __init__(self, inside: Path) -> None:
        self._inside = (
            str(inside),
            tempfile.gettempdir() + "/meterlog-",
            tempfile.gettempdir() + "/tmp",
        )
        self.on = False
        self.found: list[str] = []
        sys.addaudithook(self._hear)

    def _hear(self, event: str, arguments: tuple[object, ...]) -> None:
        if not self.on:
            return
        if event in {
            "subprocess.Popen",
            "os.system",
            "os.exec",
            "os.posix_spawn",
            "socket.connect",
        }:
            self.found.append(f"{event} {arguments!r:.200}")
        if event == "open" and isinstance(arguments[0], (str, bytes)):
            name, flags = os.fsdecode(arguments[0]), arguments[2]
            writes = isinstance(flags, int) and bool(flags & _WRITES)
            full = os.path.normpath(Path.cwd() / name)
            if full == os.devnull or full.startswith(self._inside):
                return
            if writes or not full.startswith(
                (sys.prefix, sys.base_prefix, _PROJECT, "/usr", "/proc", "/sys", "/etc/ld")
            ):
                self.found.append(f"opened {name!r}")


def one_case(reader: Reader, folder: Path, watch: Watch) -> str:
    """Let a reader read; give how it ended, '' for an answer."""
    watch.found.clear()
    _alarms(reader.seconds)
    watch.on = True
    ended = ""
    try:
        with warnings.catch_warnings(action="error"):
            reader.read(folder)
    except MeterlogError as error:
        ended = _told(error)
    finally:
        watch.on = False
        _alarms(0.0)
    if watch.found:
        raise Wrong("; ".join(watch.found[:3]))
    return ended


def _alarms(seconds: float) -> None:
    """Ring when so much was computed, or when nothing comes for a while; 0 for never."""
    signal.setitimer(signal.ITIMER_PROF, seconds)
    signal.setitimer(signal.ITIMER_REAL, _WAITS * seconds)


def _told(error: MeterlogError) -> str:
    lacks = [name for name in ("message", "subject", "remedy") if not getattr(error, name).strip()]
    if lacks:
        raise Wrong(f"{type(error).__name__} {str(error)!r:.300} has no {' and no '.join(lacks)}")
    if any(
        not (letter.isprintable() or letter == "\n") and letter < "\xa0" for letter in str(error)
    ):
        raise Wrong(f"{type(error).__name__} {str(error)!r:.300} would steer a terminal")
    if len(str(error)) > 4000:
        raise Wrong(f"{type(error).__name__} of {len(str(error))} letters: {str(error)[:200]!r}")
    return type(error).__name__


@contextlib.contextmanager
def changed(path: Path, content: bytes) -> Iterator[None]:
    """Put other content into a file for a while."""
    before = path.read_bytes()
    path.write_bytes(content)
    try:
        yield
    finally:
        _clear(path)
        path.write_bytes(before)


def _clear(path: Path) -> None:
    if path.is_dir() and not path.is_symlink():
        shutil.rmtree(path)
    else:
        path.unlink(missing_ok=True)


def _too_slow(number: int, frame: object) -> None:
    raise Slow


class Tally:
    """What came of one reader's cases."""

    def __init__(self) -> None:
        self.cases = self.refused = 0
        self.slowest = 0.0
        self.wrong: dict[str, str] = {}

    def take(self, reader: Reader, folder: Path, watch: Watch) -> None:
        """Do one case; keep each new way to go wrong once."""
        start = time.process_time()
        self.cases += 1
        try:
            self.refused += bool(one_case(reader, folder, watch))
        except (Exception, Slow) as error:
            place = traceback.extract_tb(error.__traceback__)
            mine = [one for one in place if "/meterlog/" in one.filename] or place
            where = f"{Path(mine[-1].filename).name}:{mine[-1].lineno}"
            kind = str(error)[:60] if isinstance(error, Wrong) else where
            key = f"{type(error).__name__} {kind}"
            if key not in self.wrong:
                self.wrong[key] = f"{where}: {str(error)[:300]}"
                print(f"    {reader.name}: {key}: {self.wrong[key]}", flush=True)
                raise
        finally:
            self.slowest = max(self.slowest, time.process_time() - start)


def fuzz(reader: Reader, place: Path, watch: Watch, seconds: float, first: int) -> Tally:
    """Fuzz one reader for so many seconds."""
    tally, folder = Tally(), place / reader.folder
    path = folder / reader.file
    content = path.read_bytes()
    one_case(reader, folder, watch)
    end, number = time.process_time() + seconds, first
    while time.process_time() < end:

        @seed(number)
        @settings(
            max_examples=BATCH,
            database=None,
            deadline=None,
            phases=[Phase.generate],
            suppress_health_check=list(HealthCheck),
        )
        @given(EDITS)
        def case(edits: list[tuple[int, int, int]]) -> None:
            if time.process_time() > end:
                return
            try:
                edited = reader.form(content, edits)
            except (MemoryError, RecursionError):
                return
            with changed(path, edited), contextlib.suppress(Exception, Slow):
                tally.take(reader, folder, watch)

        case()
        number += 1
    return tally


def _pipe(path: Path) -> None:
    os.mkfifo(path)


def _hole(path: Path) -> None:
    with path.open("wb") as stream:
        stream.truncate(1 << 40)


def _long_line(path: Path) -> None:
    path.write_bytes(b"a" * (64 << 20))


SPECIAL: dict[str, Callable[[Path], object]] = {
    "pipe": _pipe,
    "endless device": lambda path: path.symlink_to("/dev/zero"),
    "terminal": lambda path: path.symlink_to("/dev/tty"),
    "folder": lambda path: path.mkdir(),
    "loop": lambda path: path.symlink_to(path.name),
    "nothing behind": lambda path: path.symlink_to("nothing"),
    "hole of 1 TiB": _hole,
    "line of 64 MiB": _long_line,
    "empty": lambda path: path.write_bytes(b""),
    "deep lists": lambda path: path.write_bytes(b"[" * 1_000_000),
    "deep tables": lambda path: path.write_bytes(b'{"a":' * 200_000),
    "deep TOML": lambda path: path.write_bytes(b"a=" + b"[" * 100_000),
    "dotted TOML": lambda path: path.write_bytes(b"a" + b".a" * 100_000 + b"=1"),
    "number too long": lambda path: path.write_bytes(b'{"a":' + b"9" * 100_000 + b"}"),
    "no text": lambda path: path.write_bytes(b"\xff\xfe\0\xd8" * 1000),
    "gone": lambda path: None,
}


def special(reader: Reader, place: Path, watch: Watch) -> Tally:
    """Give one reader what is no file, or none of its kind."""
    tally, folder = Tally(), place / reader.folder
    path = folder / reader.file
    for name, put in SPECIAL.items():
        before = path.read_bytes()
        _clear(path)
        try:
            put(path)
            tally.take(reader, folder, watch)
        except (Exception, Slow):  # noqa: BLE001 - told already
            print(f"      given: {name}", flush=True)
        finally:
            _clear(path)
            path.write_bytes(before)
    return tally


def _bounded() -> None:
    signal.signal(signal.SIGALRM, _too_slow)
    signal.signal(signal.SIGPROF, _too_slow)
    with Path("/proc/self/statm").open(encoding="ascii") as stream:
        now = int(stream.read().split()[0]) * resource.getpagesize()
    resource.setrlimit(resource.RLIMIT_AS, (now + MOST_BYTES, resource.RLIM_INFINITY))


def main(arguments: list[str]) -> int:
    """Fuzz all, or those whose name holds one of the given words; 1 if anything went wrong."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--seconds", type=float, default=60.0, help="of computing, for each reader")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--special", action="store_true", help="only what is no file")
    parser.add_argument("name", nargs="*")
    options = parser.parse_args(arguments)
    with tempfile.TemporaryDirectory(prefix="meterlog-fuzz-all-") as made:
        place = Path(made)
        for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME", "HOME"):
            os.environ[name] = str(place / "home")
        make_samples(place)
        wanted = [
            one
            for one in readers(place)
            if not options.name or any(word in one.name for word in options.name)
        ]
        watch = Watch(place)
        for one in wanted:
            one.read(place / one.folder)  # what is loaded late is loaded now
        _bounded()
        total, bad = 0, 0
        for one in wanted:
            tally = special(one, place, watch)
            if not options.special:
                long = fuzz(one, place, watch, options.seconds, options.seed * 1_000_000)
                long.wrong |= tally.wrong
                long.cases += tally.cases
                tally = long
            total, bad = total + tally.cases, bad + len(tally.wrong)
            print(
                f"{one.name:32} {tally.cases:8,} cases  {tally.refused:8,} refused  "
                f"{tally.slowest:6.2f} s slowest  {len(tally.wrong)} wrong",
                flush=True,
            )
        print(f"{total:,} cases, {bad} ways to go wrong", flush=True)
        shutil.rmtree(place / "home", ignore_errors=True)
    return 1 if bad else 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
