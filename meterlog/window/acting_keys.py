"""ActingKeys: which key does what now, on the page that is on show."""

from __future__ import annotations

from collections.abc import Collection

from PySide6.QtGui import QKeyEvent

from meterlog.window.circuit_keys import CircuitAction, circuit_action_of, shown_keys
from meterlog.window.key_map import KeyMap
from meterlog.window.keys import BINDINGS, Action, action_of
from meterlog.window.page_stack import PageStack
from meterlog.window.pages import Page
from meterlog.window.session import Session
from meterlog.window.words import later, say
from meterlog.window.work_page import PageKey

PAGE_ACTIONS = {
    Action.JOB: Page.JOB,
    Action.METERS: Page.METERS,
    Action.CIRCUIT: Page.CIRCUIT,
    Action.COMPARE: Page.COMPARE,
    Action.CLAIM: Page.CLAIM,
    Action.RECORDINGS: Page.RECORDINGS,
}
"""The keys that turn to a page, and from it to the trace."""
Wanted = Action | CircuitAction | PageKey
_ANYWHERE = {
    *PAGE_ACTIONS,
    Action.LOOKS,
    Action.WHOLE_SCREEN,
    Action.KEYS,
    Action.OPEN,
    Action.GUIDE,
}
_MEASURING = {Page.METERS, Page.RUN, Page.CIRCUIT}
"""Where the start key starts; on the other pages it only stops."""
_TRACE_ONLY = {
    Action.MARK, Action.SECOND, Action.STRETCH, Action.EDITS, Action.FOUND_STEPS,
}  # fmt: skip
_SPEEDS = (Action.SPEED, Action.FASTER, Action.SLOWER)
_REPEATING = {Action.EARLIER, Action.LATER, Action.CLOSER, Action.WIDER}
_STEPPING = {CircuitAction.POINT_BACK, CircuitAction.POINT_ON}
_PAGES_SHOWN, _PAGES = "J M E B K L", later("pages")


class ActingKeys:
    """What keys ask for.

    Parameters
    ----------
    session : Session
    parts : PageStack
        The pages that bring keys of their own.
    own : KeyMap
        Keys that the technician bound; they go before all others.
    """

    def __init__(self, session: Session, parts: PageStack, own: KeyMap) -> None:
        self._session, self._parts = session, parts
        self.own = own

    def wanted(self, event: QKeyEvent, page: Page) -> tuple[Wanted, int] | None:
        """Give what a key press asks for, and for a speed its step; None when for nothing.

        A page's own keys go before those of the frame; Ctrl and a digit turns to a page.
        """
        bound = self.own.wanted(event, circuit=page is Page.CIRCUIT)
        if bound is not None:
            return bound, 0
        own = self._parts.key_of(page, event)
        if own is not None:
            return own, 0
        return circuit_action_of(event) if page is Page.CIRCUIT else action_of(event)

    def acts(self, wanted: Wanted, page: Page) -> bool:
        """Tell whether a key acts now: on its page, and anywhere while recording."""
        if not isinstance(wanted, Action):
            return isinstance(wanted, PageKey) or page is Page.CIRCUIT
        session = self._session
        on_trace, shown = page is Page.RUN, session.shown
        only = {
            **dict.fromkeys(_SPEEDS, page is Page.CIRCUIT or on_trace or session.recording),
            Action.START_STOP: page in _MEASURING or session.recording,
            Action.ASK: page is Page.METERS and not session.recording,
            Action.FOUND_STEPS: on_trace and shown is not None and shown.has_found_steps,
        }
        if wanted in _TRACE_ONLY:
            return only.get(wanted, on_trace)
        return only.get(wanted, wanted in _ANYWHERE or on_trace or session.recording)

    @staticmethod
    def repeats(wanted: Wanted) -> bool:
        """Tell whether a key held down acts again and again."""
        return wanted in _REPEATING or wanted in _STEPPING

    def shown(self, page: Page, *, guided: bool) -> tuple[tuple[str, str], ...]:
        """Name the keys that act on a page now, each with what it does.

        Parameters
        ----------
        page : Page
        guided : bool
            A walk-through is on show.
        """
        acting = {action for action in Action if self.acts(action, page)}
        if page is Page.CIRCUIT:
            return (*shown_keys(acting), *self._bound(set(CircuitAction)))
        if not guided:
            acting -= {Action.GUIDE}
        before = page is Page.METERS and not self._session.recording
        own = tuple((one.shown, one.words) for one in self._parts.keys(page) if one.shown)
        named = _named(acting - set(PAGE_ACTIONS), before=before)
        return (*own, *named, (_PAGES_SHOWN, say(_PAGES)), *self._bound(acting))

    def _bound(self, acting: Collection[Action | CircuitAction]) -> tuple[tuple[str, str], ...]:
        """Name the technician's own keys of these actions."""
        all_of = [(" / ".join(self.own.keys(one)), say(one.value)) for one in acting]
        return tuple(sorted(pair for pair in all_of if pair[0]))


def _named(acting: Collection[Action], *, before: bool) -> tuple[tuple[str, str], ...]:
    return tuple(
        (one.shown, say(one.before if before and one.before else one.words))
        for one in BINDINGS
        if one.shown and one.action in acting
    )
