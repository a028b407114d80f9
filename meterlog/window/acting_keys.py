"""ActingKeys: which key does what now, on the page that is on show."""

from __future__ import annotations

from collections.abc import Collection

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from meterlog.window.circuit_keys import (
    CIRCUIT_BINDINGS,
    CircuitAction,
    circuit_action_of,
    shown_keys,
)
from meterlog.window.key_map import KeyMap
from meterlog.window.keys import BINDINGS, Action, action_of
from meterlog.window.named_keys import keys_left
from meterlog.window.page_stack import PageStack
from meterlog.window.pages import TITLES, Page
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
_ON_KEYS = {*PAGE_ACTIONS, Action.LOOKS, Action.WHOLE_SCREEN, Action.KEYS, Action.START_STOP}
"""What acts where keys are read about and tried: it turns pages, and stops when asked twice."""
_MEASURING = {Page.METERS, Page.RUN, Page.CIRCUIT}
"""Where the start key starts; on the other pages it only stops."""
_WORKED_ON = [page for page in Page if page is not Page.KEYS]
"""The page that tells of them names its own keys."""
_TRACE_ONLY = {
    Action.MARK, Action.SECOND, Action.STRETCH, Action.EDITS, Action.FOUND_STEPS,
}  # fmt: skip
_SPEEDS = (Action.SPEED, Action.FASTER, Action.SLOWER)
_ON_CIRCUIT = {
    one.action for one in CIRCUIT_BINDINGS if isinstance(one.action, Action) and one.keys
}
"""What the Circuit page has keys for; its other keys do something else."""
_REPEATING = {Action.EARLIER, Action.LATER, Action.CLOSER, Action.WIDER}
_STEPPING = {CircuitAction.POINT_BACK, CircuitAction.POINT_ON}
_ENTER = {Qt.Key.Key_Enter, Qt.Key.Key_Return}
_PAGES_SHOWN, _BY_PLACE, _PAGES = "J M E B K L", later("Ctrl+1…7"), later("pages")


def acts_on(action: Action, page: Page, *, recording: bool) -> bool:
    """Tell whether an action can be asked for on a page, while recording or without."""
    if page is Page.KEYS and action not in _ON_KEYS:
        return False
    if action in _TRACE_ONLY:
        return page is Page.RUN
    if action is Action.ASK:
        return page is Page.METERS and not recording
    if action is Action.START_STOP:
        return page in _MEASURING or recording
    if action in _SPEEDS and page is Page.CIRCUIT:
        return True
    return action in _ANYWHERE or page is Page.RUN or recording


def where_words(action: Action) -> str:
    """Say on which pages the keys of an action do it, while recording and without."""
    if action is Action.START_STOP:
        return say("Meters, Circuit, Trace; else: stop")
    without, recording = (
        {page for page in _WORKED_ON if acts_on(action, page, recording=now)}
        for now in (False, True)
    )
    if action not in _ON_CIRCUIT:
        without, recording = without - {Page.CIRCUIT}, recording - {Page.CIRCUIT}
    if len(without) <= 2:
        named = ", ".join(say(one.words) for one in TITLES if one.page in without)
        if len(recording) <= 2:
            return named
        if Page.CIRCUIT in recording:
            return say("{pages}; recording: all pages", pages=named)
        return say("{pages}; recording: all but Circuit", pages=named)
    return say("all pages") if Page.CIRCUIT in without else say("all but Circuit")


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
        shown = self._session.shown
        if wanted is Action.FOUND_STEPS and not (shown is not None and shown.has_found_steps):
            return False
        return acts_on(wanted, page, recording=self._session.recording)

    @staticmethod
    def repeats(wanted: Wanted) -> bool:
        """Tell whether a key held down acts again and again."""
        return wanted in _REPEATING or wanted in _STEPPING

    def shown(
        self, page: Page, *, guided: bool, in_lines: bool = False, typing: bool = False
    ) -> tuple[tuple[str, str], ...]:
        """Name the keys that act on a page now, each with what it does.

        First those that somebody bound, last those of the looks and of the pages.

        Parameters
        ----------
        page : Page
        guided : bool
            A walk-through is on show.
        in_lines : bool
            The focus is on a line that keeps Enter for itself.
        typing : bool
            It is in a text field, which takes all letters.
        """
        acting = {action for action in Action if self.acts(action, page)}
        if page is Page.CIRCUIT:
            bound = self._bound((*CircuitAction, *acting), circuit=True)
            taken = self.own.taken(circuit=True)
            return (*bound, *shown_keys(acting, taken), (_BY_PLACE, say(_PAGES)))
        if not guided:
            acting -= {Action.GUIDE}
        before = page is Page.METERS and not self._session.recording
        bound, bound_keys = self._bound(acting), self.own.taken(circuit=False)
        own = [("Enter", say("it holds, next line"))] if in_lines else []
        if typing:
            # The others can be clicked there, too: they stay on show.
            own = [("Esc", say("leaves the field, then keys act")), *own]
        for one in self._parts.keys(page):
            left = keys_left(one.shown, bound_keys)
            own += [(left, one.words)] if left else []
        # What the page takes itself is not the frame's there.
        taken = bound_keys | {key for one in self._parts.keys(page) for key in one.keys}
        taken |= _ENTER if in_lines else set()
        named = _named(acting - set(PAGE_ACTIONS), taken, before=before)
        return (*bound, *own, *named, (keys_left(_PAGES_SHOWN, taken), say(_PAGES)))

    def _bound(
        self, acting: Collection[Action | CircuitAction], *, circuit: bool = False
    ) -> tuple[tuple[str, str], ...]:
        """Name the technician's own keys of these actions."""
        all_of = [
            (" / ".join(self.own.keys(one, circuit=circuit)), say(one.value)) for one in acting
        ]
        return tuple(sorted(pair for pair in all_of if pair[0]))


def _named(
    acting: Collection[Action], taken: Collection[Qt.Key], *, before: bool
) -> tuple[tuple[str, str], ...]:
    named = []
    for one in BINDINGS:
        if not one.shown or one.action not in acting:
            continue
        words = say(one.before if before and one.before else one.words)
        left = keys_left(one.shown, taken)
        first = one.keys[0] in taken
        # Where the page takes the key itself, the one that acts everywhere does it.
        held = (one.held,) if first and one.held else ()
        shown = " ".join((*held, left)).strip()
        named += [(shown, words)] if shown else []
    return tuple(named)
