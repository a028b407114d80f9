"""PortsPanel: which ports there are, and which meter answers on those that may be asked."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from meterlog.acquire import Discovery
from meterlog.instruments import PortInfo, list_ports
from meterlog.profile import MeterProfile, load_listed_meters
from meterlog.window.last_setup import port_identity
from meterlog.window.port_entry import PortEntry
from meterlog.window.words import later, say, say_many

_LOOK_MS = 100
_CLOSING_S = 1.5
_ASK, _STOP = later("Ask these ports  (A)"), later("Stop asking  (A)")
_FIRST_TICK = later("Tick the ports that may be asked. No other is opened or sent anything.")
_NOT_NOW = later("A recording is in progress: ports can be asked once it is stopped.")
_NO_PORT = later("No serial port is plugged in. Plug one in and look again, or add an address.")


class PortsPanel(QFrame):
    """A line for each port. ``taken`` is emitted with a profile's name and a port.

    ``asking_began`` tells that the user let the ticked ports be asked, ``listed`` that there are
    other lines or buttons now.

    Nothing is opened until the button is pressed, and then only what is ticked. Asking goes on in
    threads; a timer fetches what they found.

    Parameters
    ----------
    ports : callable
        Gives the ports that are there.
    profiles : callable
        Gives the profiles to try, the user's own first.
    discovery : callable
        Makes what asks, of the ports included and the profiles.
    """

    taken = Signal(str, str)
    asking_began = Signal()
    listed = Signal()

    def __init__(
        self,
        ports: Callable[[], Sequence[PortInfo]] = list_ports,
        profiles: Callable[[], Sequence[MeterProfile]] = lambda: load_listed_meters()[0],
        discovery: Callable[[Sequence[PortInfo], Sequence[MeterProfile]], Discovery] = Discovery,
    ) -> None:
        super().__init__()
        self._list_ports = ports
        self._list_profiles = profiles
        self._make = discovery
        self._discovery: Discovery | None = None
        self._asked: dict[str, PortInfo] = {}
        self._added: list[PortInfo] = []
        self._remembered: frozenset[str] = frozenset()
        self._used: Collection[tuple[str, str]] = ()
        self.entries: list[PortEntry] = []
        self.setProperty("rank", "panel")
        self.ask_button = QPushButton(say(_ASK))
        self.ask_button.setAccessibleName(say("ask the ticked ports which meter is on them"))
        self.ask_button.clicked.connect(self.ask)
        self.again = QPushButton(say("Look for ports again"))
        self.again.setAccessibleName(say("look for ports again"))
        self.said = QLabel("")
        self.said.setWordWrap(True)
        self.said.setAccessibleName(say("how far the asking is"))
        self.address = QLineEdit()
        self.address.setPlaceholderText(say("another address, such as socket://host:port"))
        self.address.setAccessibleName(say("address of another port"))
        self.address.returnPressed.connect(self.add_address)
        self.add = QPushButton(say("Add"))
        self.add.setAccessibleName(say("add this address to the ports"))
        self.add.clicked.connect(self.add_address)
        self._place = QVBoxLayout()
        self._timer = QTimer(self)
        self._timer.setInterval(_LOOK_MS)
        self._timer.timeout.connect(self.look)
        self._lay_out()
        self.show_ports(tuple(ports()))

    def _lay_out(self) -> None:
        buttons = QHBoxLayout()
        buttons.addWidget(self.ask_button)
        buttons.addWidget(self.again)
        buttons.addStretch(1)
        other = QHBoxLayout()
        other.addWidget(self.address, 1)
        other.addWidget(self.add)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 8, 8, 8)
        column.addLayout(self._place)
        column.addLayout(other)
        column.addLayout(buttons)
        column.addWidget(self.said)

    def show_ports(self, ports: Sequence[PortInfo]) -> None:
        """Show these ports; ticks and answers of those that were there before stay."""
        before = {entry.port.device: entry for entry in self.entries}
        listed = {port.device for port in ports}
        every = [*ports, *(port for port in self._added if port.device not in listed)]
        entries = []
        for port in every:
            entry = before.pop(port.device, None)
            if entry is not None and entry.port != port:
                before[port.device] = entry  # another adapter, or other rights, at this name
                entry = None
            entries.append(entry or self._entry(port))
        for entry in before.values():
            self._place.removeWidget(entry)
            entry.deleteLater()
        self.entries = entries
        for entry in entries:
            self._place.addWidget(entry)
        if self._discovery is None:
            self.said.setText(say(_FIRST_TICK) if entries else say(_NO_PORT))
        self.listed.emit()

    def _entry(self, port: PortInfo) -> PortEntry:
        entry = PortEntry(port)
        entry.taken.connect(self.taken)
        entry.may_ask.setChecked(port.usable and port_identity(port) in self._remembered)
        return entry

    def recall(self, may_ask: Collection[str], addresses: Sequence[str]) -> None:
        """Tick the ports that were asked the last time; none is asked before the key is pressed.

        Parameters
        ----------
        may_ask : collection of str
            By :func:`~meterlog.window.last_setup.port_identity`.
        addresses : sequence of str
            Those of them that were typed.
        """
        self._remembered = frozenset(may_ask)
        self._added += [PortInfo(address) for address in addresses]
        self.show_ports([entry.port for entry in self.entries])
        for entry in self.entries:
            if port_identity(entry.port) in self._remembered:
                entry.may_ask.setChecked(entry.port.usable)

    def ticked(self) -> tuple[tuple[str, ...], tuple[str, ...]]:
        """Give the ports that may be asked, for :meth:`recall`."""
        ticked = [entry.port for entry in self.entries if entry.included]
        typed = tuple(port.device for port in ticked if port in self._added)
        return tuple(port_identity(port) for port in ticked), typed

    def show_used(self, used: Collection[tuple[str, str]]) -> None:
        """Mark the answers that are chosen as meters: pairs of profile and port."""
        self._used = used
        for entry in self.entries:
            entry.show_used({profile for profile, port in used if port == entry.port.device})

    def in_order(self) -> list[QWidget]:
        """Give what Tab goes through, in the order in which it is read."""
        lines = [part for entry in self.entries for part in (entry.may_ask, *entry.buttons)]
        return [*lines, self.address, self.add, self.ask_button, self.again]

    def add_address(self) -> None:
        """Add the address typed as a port; whoever types it lets it be asked."""
        address = self.address.text().strip()
        if not address:
            return
        self.address.clear()
        known = {entry.port.device: entry for entry in self.entries}
        if address not in known:
            self._added.append(PortInfo(address))
            self.show_ports([entry.port for entry in self.entries])
            known = {entry.port.device: entry for entry in self.entries}
        known[address].may_ask.setChecked(True)

    def ask(self) -> None:
        """Ask the ticked ports; when that is going on, stop it."""
        if self._discovery is not None:
            self._discovery.cancel()
            self.said.setText(say("stopping…"))
            return
        included = [entry.port for entry in self.entries if entry.included]
        if not included:
            self.said.setText(say(_FIRST_TICK) if self.entries else say(_NO_PORT))
            return
        self._asked = {port.device: port for port in included}
        self._discovery = self._make(included, self._list_profiles())
        self._discovery.start()
        self.asking_began.emit()
        self.ask_button.setText(say(_STOP))
        self.look()
        self._timer.start()

    def bar(self, *, recording: bool) -> None:
        """Let no port be asked while a recording is in progress: it has some of them open."""
        self.ask_button.setDisabled(recording)
        if recording:
            self.said.setText(say(_NOT_NOW))
        elif self.said.text() == say(_NOT_NOW):
            self.said.setText(say(_FIRST_TICK) if self.entries else say(_NO_PORT))

    @property
    def asking(self) -> bool:
        """Whether ports are being asked."""
        return self._discovery is not None

    def look(self) -> None:
        """Fetch how far the asking is."""
        discovery = self._discovery
        if discovery is None:
            return
        found = {one.port: one for one in discovery.progress()}
        for entry in self.entries:
            # What has come to that name since was not asked.
            if entry.port.device in found and entry.port == self._asked[entry.port.device]:
                entry.show_progress(found[entry.port.device])
        done = [one.answer for one in found.values() if one.answer is not None]
        many = len(found)
        if len(done) < many:
            self.said.setText(
                say(
                    "{done} of {many} ports have answered or been given up",
                    done=len(done),
                    many=many,
                )
            )
            return
        self._timer.stop()
        self._discovery = None
        self.ask_button.setText(say(_ASK))
        fitting = sum(bool(answer.fits) for answer in done)
        ports = say_many(many, "1 port", "{many} ports", many=many)
        self.said.setText(
            say(
                "{ports} asked: a meter was found on {fitting}.",
                ports=ports,
                fitting=fitting or say("none"),
            )
        )
        self.show_used(self._used)
        self.listed.emit()

    def stop(self) -> None:
        """Stop asking and wait, about a second at most, until the ports are closed."""
        if self._discovery is not None:
            self._discovery.cancel()
            self._discovery.wait(_CLOSING_S)
            self.look()
