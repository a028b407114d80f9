"""Doing: what each action of the frame does."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from meterlog.model import LEADS, EventKind
from meterlog.window.acting_keys import PAGE_ACTIONS
from meterlog.window.keys import Action

if TYPE_CHECKING:
    from meterlog.window.desk import Desk


class Doing:
    """Does an action, whichever key or button asked for it.

    Parameters
    ----------
    desk : Desk
        With all its parts.
    """

    def __init__(self, desk: Desk) -> None:
        self._desk = desk

    def __call__(self, action: Action, step: int) -> None:
        """Do it; ``step`` is the speed of :attr:`Action.SPEED`."""
        if action in PAGE_ACTIONS:
            self._desk.turn_page(PAGE_ACTIONS[action])
        else:
            self._all(step)[action]()

    def _all(self, step: int) -> dict[Action, Callable[[], object]]:
        desk = self._desk
        session, page, sound = desk.session, desk.run_page, desk.sound
        return {
            Action.SPEED: lambda: desk.command_speed(step),
            Action.START_STOP: desk.start_or_stop,
            Action.FASTER: lambda: desk.command_speed(desk.next_speed(1)),
            Action.SLOWER: lambda: desk.command_speed(desk.next_speed(-1)),
            Action.KEYS: desk.turn_keys,
            Action.TAP: lambda: session.mark(EventKind.TAP),
            Action.WIGGLE: lambda: session.mark(EventKind.WIGGLE, LEADS),
            Action.NOTE: desk.lines.note,
            Action.MARK: desk.lines.mark,
            Action.ZERO: session.take_zero,
            Action.TYPE_READING: desk.lines.ask_reading,
            Action.FOLLOW: page.follow,
            Action.EARLIER: lambda: page.look(move=-0.25),
            Action.LATER: lambda: page.look(move=0.25),
            Action.CLOSER: lambda: page.look(zoom=1),
            Action.WIDER: lambda: page.look(zoom=-1),
            Action.ASK: desk.meters_page.ports.ask,
            Action.OPEN: desk.browse,
            Action.LOOKS: desk.window.toggle_looks,
            Action.SOUND: sound.turn,
            Action.FOLLOWED: sound.turn_followed,
            Action.LOUDER: lambda: sound.louder(1),
            Action.SOFTER: lambda: sound.louder(-1),
            Action.WHOLE_SCREEN: desk.window.turn_full_screen,
            Action.GUIDE: desk.window.guide.forward,
            Action.FOUND_STEPS: session.turn_found_steps,
            Action.UNDO: desk.undo,
            Action.EDITS: desk.edits.turn,
            Action.SECOND: desk.second.turn,
            Action.STRETCH: page.turn_stretch,
            Action.PART: desk.job.turn_part,
        }
