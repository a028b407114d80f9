"""SleepBlock: keeps the computer awake while something is being recorded, where it lets us."""

from __future__ import annotations

import contextlib
import os
import shutil
import subprocess
import sys
import tempfile
import threading
from typing import IO, Protocol

BLOCKED = "sleep is blocked while recording"
NOT_BLOCKED = "sleep is not blocked"
_BY_HAND = "switch off sleep in the system's settings, and leave the lid open"
_END_S = 2.0


class _Holder(Protocol):
    """One way of keeping a computer awake."""

    def refused(self) -> str:
        """Say why it does not hold; empty while it does."""
        ...

    def release(self) -> None:
        """Let the computer sleep again; never raises."""
        ...


class SleepBlock:
    """Keeps the computer awake from its making to :meth:`release`.

    Never raises: a recording is worth having on a computer that may fall asleep, too.
    :attr:`words` says how it is. The system ends the block by itself if this program dies. One
    thread may ask how it is while another releases it.
    """

    def __init__(self) -> None:
        self._holder: _Holder | None = None
        self._refused = ""
        self._released = False
        try:
            self._holder = _holder()
        except (OSError, ValueError, AttributeError) as error:
            self._refused = str(error)

    @property
    def holds(self) -> bool:
        """True while the system keeps the computer awake for us."""
        holder = self._holder
        return holder is not None and not self._released and not holder.refused()

    @property
    def words(self) -> str:
        """Say whether sleep is blocked, and what to do if it is not; empty once released."""
        holder = self._holder
        if self._released:
            return ""
        why = self._refused if holder is None else holder.refused()
        if holder is not None and not why:
            return BLOCKED
        return f"{NOT_BLOCKED}: {why or 'this system has no known way'}; {_BY_HAND}"

    def release(self) -> None:
        """Let the computer sleep again; may be called again. Never raises."""
        self._released = True
        holder, self._holder = self._holder, None
        if holder is not None:
            holder.release()


def _holder() -> _Holder | None:
    if sys.platform == "win32":
        return _PowerRequest()
    if sys.platform == "darwin":
        return _held_by("caffeinate", [["-i", "-m", "-s", "-w", str(os.getpid())]])
    # Who may block which of these is the system's to say: less is better than nothing.
    return _held_by(
        "systemd-inhibit",
        [
            [
                f"--what={what}",
                "--who=meterlog",
                "--why=a recording is running",
                "--mode=block",
                "cat",
            ]
            for what in ("sleep:idle:handle-lid-switch", "sleep:idle", "idle")
        ],
    )


def _held_by(name: str, tries: list[list[str]]) -> _Holder:
    program = shutil.which(name)
    if program is None:
        raise FileNotFoundError(f"there is no {name} here")
    return _Child(program, tries)


class _Child:
    """A child process that the system asks nothing else of than to be there.

    It ends when its standard input does, and so also when this program is killed.

    Parameters
    ----------
    program : str
    tries : list of list of str
        Its arguments; those that ask for more come first.
    """

    def __init__(self, program: str, tries: list[list[str]]) -> None:
        self._program = program
        self._tries = tries
        self._said: IO[bytes] | None = None
        self._lock = threading.Lock()
        self._over = False
        self._process = self._start()

    def _start(self) -> subprocess.Popen[bytes]:
        # A file and not a pipe: nobody reads it while the child lives.
        self._said = tempfile.TemporaryFile()  # noqa: SIM115 - open as long as the child
        return subprocess.Popen(
            [self._program, *self._tries.pop(0)],
            stdin=subprocess.PIPE,
            stdout=subprocess.DEVNULL,
            stderr=self._said,
            # Away from the terminal: nobody may be asked for a password, and Ctrl-C is not for it.
            start_new_session=True,
        )

    def refused(self) -> str:
        # A child that was begun after the release would keep the computer awake for good.
        with self._lock:
            return "" if self._over else self._refused()

    def _refused(self) -> str:
        while self._process.poll() is not None:
            if not self._tries:
                return f"{os.path.basename(self._program)} says {self._last_line()!r}"  # noqa: PTH119
            self._let_go()
            try:
                self._process = self._start()
            except OSError as error:
                self._tries = []
                return str(error)
        return ""

    def _last_line(self) -> str:
        if self._said is None or self._said.closed:
            return "nothing"
        self._said.seek(0)
        lines = self._said.read(4096).decode("utf-8", "replace").split("\n")
        return next((line.strip() for line in reversed(lines) if line.strip()), "nothing")

    def _let_go(self) -> None:
        if self._process.stdin is not None:
            with contextlib.suppress(OSError):
                self._process.stdin.close()
        if self._said is not None:
            self._said.close()

    def release(self) -> None:
        with self._lock:
            self._over = True
            self._let_go()
        with contextlib.suppress(OSError, subprocess.TimeoutExpired):
            self._process.terminate()
            self._process.wait(_END_S)
            return
        with contextlib.suppress(OSError, subprocess.TimeoutExpired):
            self._process.kill()
            self._process.wait(_END_S)


class _PowerRequest:
    """What Windows is told; in force for as long as this process lives and has not taken it back.

    Source
    ------
    PowerCreateRequest, PowerSetRequest of the Windows API: unlike SetThreadExecutionState they
    hold whichever thread asks, and for as long as the handle is open.
    """

    _SYSTEM_REQUIRED = 1
    _SIMPLE_STRING = 1

    def __init__(self) -> None:
        import ctypes

        class Reason(ctypes.Structure):
            _fields_ = (
                ("version", ctypes.c_ulong),
                ("flags", ctypes.c_ulong),
                ("words", ctypes.c_wchar_p),
            )

        self._kernel = ctypes.WinDLL("kernel32")  # type: ignore[attr-defined,unused-ignore]
        self._kernel.PowerCreateRequest.restype = ctypes.c_void_p
        reason = Reason(0, self._SIMPLE_STRING, "a recording is running")
        handle = self._kernel.PowerCreateRequest(ctypes.byref(reason))
        if handle in {None, ctypes.c_void_p(-1).value}:
            raise OSError("the system takes no power request")
        self._handle = ctypes.c_void_p(handle)
        if not self._kernel.PowerSetRequest(self._handle, self._SYSTEM_REQUIRED):
            self.release()
            raise OSError("the system refuses to stay awake")

    def refused(self) -> str:
        return ""

    def release(self) -> None:
        with contextlib.suppress(OSError):
            self._kernel.PowerClearRequest(self._handle, self._SYSTEM_REQUIRED)
            self._kernel.CloseHandle(self._handle)
