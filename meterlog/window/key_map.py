"""KeyMap: keys of one's own, beside those that are always there: a foot pedal, a ring, a pad."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent, QKeySequence

from meterlog.model.errors import DiskFailed, UsageError
from meterlog.profile import settings_folder
from meterlog.window.circuit_keys import CircuitAction
from meterlog.window.kept_file import read_kept, write_kept
from meterlog.window.keys import Action
from meterlog.window.words import say

_FILE = "keys.json"
Bound = Action | CircuitAction
UNBOUND = frozenset({Action.SPEED, CircuitAction.SIGN})
"""Their keys say which speed, or which sign: one key more could not."""
_NEVER = {
    Qt.Key.Key_Escape, Qt.Key.Key_Tab, Qt.Key.Key_Backtab, Qt.Key.Key_Shift, Qt.Key.Key_Control,
    Qt.Key.Key_Alt, Qt.Key.Key_AltGr, Qt.Key.Key_Meta, Qt.Key.Key_CapsLock, Qt.Key.Key_NumLock,
    Qt.Key.Key_unknown,
}  # fmt: skip
"""Without them the window could not be worked any more, or they only go with others."""


class KeyMap:
    """Which keys of one's own do what. A key may do one thing on the Circuit page, one elsewhere.

    Parameters
    ----------
    settings : Path or None
        Folder in which they are kept; None: the user's settings folder.

    Attributes
    ----------
    trouble : str
        Why what was kept could not be taken; empty where it was, or where there was nothing.
    """

    def __init__(self, settings: Path | None = None) -> None:
        self._path = (settings_folder() if settings is None else settings) / _FILE
        self.trouble = ""
        self._elsewhere: dict[Qt.Key, Action] = {}
        self._circuit: dict[Qt.Key, CircuitAction] = {}
        self._load()

    def wanted(self, event: QKeyEvent, *, circuit: bool) -> Bound | None:
        """Give what a key of one's own asks for; None where it is none of them."""
        held = event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier
        if held != Qt.KeyboardModifier.NoModifier:
            return None
        key = Qt.Key(event.key())
        found: Bound | None = self._circuit.get(key) if circuit else None
        return found if found is not None else self._elsewhere.get(key)

    def taken(self, *, circuit: bool) -> frozenset[Qt.Key]:
        """Give the keys of one's own that do something on the Circuit page, or elsewhere."""
        return frozenset({*self._elsewhere, *(self._circuit if circuit else ())})

    def keys(self, action: Bound, *, circuit: bool = False) -> tuple[str, ...]:
        """Give the names of an action's own keys, in the order in which they were bound.

        Parameters
        ----------
        action : Action or CircuitAction
        circuit : bool
            Those that do it on the Circuit page: not those that have another meaning there.
        """
        of: Mapping[Qt.Key, Bound] = (
            self._circuit if isinstance(action, CircuitAction) else self._elsewhere
        )
        other = self._circuit if circuit and isinstance(action, Action) else {}
        return tuple(
            key_name(key) for key, bound in of.items() if bound is action and key not in other
        )

    def bind(self, key: Qt.Key, action: Bound) -> Bound | None:
        """Let a key do something, and keep that.

        Returns
        -------
        Action or CircuitAction or None
            What the key of one's own did before there.

        Raises
        ------
        UsageError
            If the key or the action can't be bound.
        DiskFailed
            If it can't be kept; then nothing has changed.
        """
        if key in _NEVER:
            raise UsageError(
                say("can't be bound: the window could not be worked without it."),
                subject=say(key_name(key)) or say("this key"),
                remedy=say("Press another key."),
            )
        if action in UNBOUND:
            raise UsageError(
                say("has keys that say which one; another key could not."),
                subject=say(action.value),
                remedy=say("Bind another action, such as the next speed."),
            )
        before: Bound | None
        kept = dict(self._elsewhere), dict(self._circuit)
        if isinstance(action, CircuitAction):
            before = self._circuit.get(key)
            self._circuit[key] = action
        else:
            before = self._elsewhere.get(key)
            self._elsewhere[key] = action
        self._keep_or(kept)
        return before

    def free(self, action: Bound) -> None:
        """Let an action have no keys of one's own any more; raises as :meth:`bind`."""
        kept = dict(self._elsewhere), dict(self._circuit)
        self._elsewhere = {key: one for key, one in self._elsewhere.items() if one is not action}
        self._circuit = {key: one for key, one in self._circuit.items() if one is not action}
        self._keep_or(kept)

    def _keep_or(self, before: tuple[dict[Qt.Key, Action], dict[Qt.Key, CircuitAction]]) -> None:
        values = {
            "circuit": {key_name(key): one.value for key, one in self._circuit.items()},
            "elsewhere": {key_name(key): one.value for key, one in self._elsewhere.items()},
        }
        try:
            write_kept(self._path, values)
        except OSError as error:
            self._elsewhere, self._circuit = before
            raise DiskFailed(
                say("can't be written: {why}.", why=error.strerror),
                subject=str(self._path),
                remedy=say("Free some space, or ask for the right to write there."),
            ) from error

    def _load(self) -> None:
        try:
            found = read_kept(self._path)
            self._elsewhere = {
                key_named(name): Action(what) for name, what in found["elsewhere"].items()
            }
            self._circuit = {
                key_named(name): CircuitAction(what) for name, what in found["circuit"].items()
            }
        except FileNotFoundError:
            return
        except (OSError, ValueError, TypeError, KeyError, AttributeError) as error:
            self._elsewhere, self._circuit = {}, {}
            self.trouble = say(
                "Your own keys could not be read from {path}: {error}", path=self._path, error=error
            )


def key_name(key: Qt.Key) -> str:
    """Give the name of a key, as it stands in the file."""
    return QKeySequence(key).toString(QKeySequence.SequenceFormat.PortableText)


def key_named(name: str) -> Qt.Key:
    """Give the key of a name.

    Raises
    ------
    ValueError
        If there is no such key.
    """
    sequence = QKeySequence.fromString(name, QKeySequence.SequenceFormat.PortableText)
    key = next((one for one in Qt.Key if key_name(one) == name), None) if len(name) else None
    if sequence.count() != 1 or key is None:
        raise ValueError(say("'{name}' is no key.", name=name))
    if key in _NEVER:
        raise ValueError(say("'{name}' can't be bound.", name=name))
    return key
