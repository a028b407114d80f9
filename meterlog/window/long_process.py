"""LongProcess: long work in a process of its own, for what lets no thread run beside it.

A library that works for a tenth of a second within one call holds the interpreter's lock all that
time, and a window beside it can't paint. In another process it holds a lock of its own.
"""

from __future__ import annotations

import os
import signal
import time
from collections.abc import Callable
from typing import TYPE_CHECKING, TypeVar, cast

from meterlog.model.errors import MeterlogError
from meterlog.window.long_work import Cancelled, LongWork, Progress, fault_words
from meterlog.window.words import say

if TYPE_CHECKING:
    from multiprocessing.connection import Connection
    from multiprocessing.process import BaseProcess

T = TypeVar("T")

_ASK_S = 0.05
_TELL_S = 0.02
_STOP_S = 3.0
"""How long cancelled work may take to its next step; then it is broken off, and tidies up."""
_END_S = 2.0
_LESS_URGENT = 3
"""Behind the window, which must paint; but somebody waits for this. Far down, as work in the
background is, it would hardly go on while another program keeps all cores busy."""


class LongProcess(LongWork[T]):
    """As :class:`~meterlog.window.long_work.LongWork`, in a process instead of a thread.

    What is begun, and what comes of it, goes from one process to the other: it must be a function
    of a module, or a ``functools.partial`` of one, with values that can be pickled. An error is
    told as in a thread, by its words.
    """

    def begin(self, work: Callable[[Progress], T]) -> bool:
        """Begin; False where something is under way already."""
        return super().begin(lambda tell: apart(work, tell, f"meterlog-{self._name}"))


def apart(
    work: Callable[[Progress], T], tell: Progress, name: str, patience_s: float = _STOP_S
) -> T:
    """Do the work in a process and wait for what comes of it, in a thread.

    Parameters
    ----------
    work : callable
        See :class:`LongProcess`.
    tell : callable
        Called many times a second with the part done, 0 to 1.
    name : str
        Of the process.
    patience_s : float, seconds
        How long it may take to its next step once it is wanted no more.

    Raises
    ------
    Cancelled
        If ``tell`` raises it; the process has ended then.
    MeterlogError
        With the words of what went wrong there, or if the process can't start or breaks off.
    """
    from multiprocessing import get_context

    context = get_context("spawn")
    here, there = context.Pipe()
    child = context.Process(target=_run, args=(there, work), name=name, daemon=True)
    with here:
        try:
            with there:
                child.start()
        except OSError as error:
            raise _broken(say("it did not start: {error}", error=error.strerror)) from error
        try:
            made = cast("T", _heard(here, tell))
        except Cancelled:
            if not _has_stopped(here, patience_s):
                child.terminate()
            raise
        except (EOFError, OSError) as error:
            child.join(_END_S)
            raise _broken(say("it broke off (code {code})", code=child.exitcode)) from error
        finally:
            _end(child)
        return made


def _heard(here: Connection, tell: Progress) -> object:
    """Tell the progress until the outcome has come, and give it as it came."""
    part = 0.0
    while True:
        tell(part)
        if not here.poll(_ASK_S):
            continue
        kind, value = here.recv()
        if kind == "part":
            part = float(value)
        elif kind == "made":
            made: object = value
            return made
        elif kind == "trouble":
            raise MeterlogError(str(value))
        else:
            raise MeterlogError(fault_words(*value))


def _has_stopped(here: Connection, patience_s: float) -> bool:
    """Ask the work to stop, and wait while it tidies up; False where it takes too long."""
    try:
        here.send(None)
        end_s = time.monotonic() + patience_s
        while (left_s := end_s - time.monotonic()) > 0.0 and here.poll(left_s):
            if here.recv()[0] != "part":
                return True
    except (EOFError, OSError):
        return True  # it has ended
    return False


def _end(child: BaseProcess) -> None:
    child.join(_END_S)
    if child.is_alive():
        child.terminate()
        child.join(_END_S)
    if child.is_alive():
        child.kill()
        child.join()
    child.close()


def _broken(why: str) -> MeterlogError:
    return MeterlogError(say("This can't be done now: {why}.", why=why), remedy=say("Try again."))


class _Teller:
    """Tells the part done from within the process; stops the work where it is not wanted more."""

    def __init__(self, there: Connection) -> None:
        self._there = there
        self._told_s = float("-inf")

    def __call__(self, part: float) -> None:
        if time.monotonic() - self._told_s < _TELL_S:
            return
        self._told_s = time.monotonic()
        try:
            asked = self._there.poll()
            if not asked:
                self._there.send(("part", part))
        except (EOFError, OSError) as error:
            raise Cancelled from error  # the window is gone
        if asked:
            raise Cancelled


def _leave(*_: object) -> None:
    """Break the work off where it is, so that it takes away what it has half made."""
    raise Cancelled


def _run(there: Connection, work: Callable[[Progress], object]) -> None:
    """Do the work; in the process of its own."""
    # Ctrl-C is for the window, which ends this.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    signal.signal(signal.SIGTERM, _leave)
    if hasattr(os, "nice"):
        os.nice(_LESS_URGENT)
    try:
        outcome: tuple[str, object] = ("made", work(_Teller(there)))
    except Cancelled:
        outcome = ("cancelled", "")
    # The window puts it in its own language.
    except MeterlogError as error:
        outcome = ("trouble", str(error))
    # The top of a process: whatever goes wrong must reach who waits for the outcome.
    except Exception as error:  # noqa: BLE001
        outcome = ("fault", (type(error).__name__, str(error)))
    try:
        there.send(outcome)
    except (EOFError, OSError):
        return  # nobody waits for it any more
