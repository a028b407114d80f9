"""Cautions: what can hurt the technician, the meter or the vehicle. A strip that folds away."""

from __future__ import annotations

from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from meterlog.window.words import later, say

CAUTIONS = (
    (
        later("First of all"),
        later(
            "The vehicle's service manual and the local safety rules come before anything "
            "shown here."
        ),
    ),
    (
        later("Moving fan"),
        later(
            "Keep fingers, hair, sleeves and leads out of the wheel. A motor out of its "
            "housing draws more and can jump: fix it, and run it for seconds only."
        ),
    ),
    (
        later("Airbag wiring"),
        later(
            "Never probe or ohm it, and never lean a pin against it; its connectors are "
            "often yellow. Make the system safe as the manual says before working behind "
            "the dash."
        ),
    ),
    (
        later("High-voltage vehicles"),
        later(
            "Stay off orange cables and anything above 60 V DC. Only the 12 V or 24 V fan "
            "circuit, and only if you are trained for the vehicle."
        ),
    ),
    (
        later("Jumper leads"),
        later(
            "Fused only, with a fuse no larger than the circuit's own. Never bridge a fuse "
            "that blew."
        ),
    ),
    (
        later("Meter"),
        later(
            "Volts: leads in the V jack, never left in the current jack. The current jack "
            "ends at its fuse, often 10 A: a starting fan opens it, so use a clamp. Use "
            "leads and a meter of CAT III 600 V or better."
        ),
    ),
    (
        later("Hot parts"),
        later(
            "Resistor packs and controllers stay hot after running. Ignition and fan off "
            "before unplugging: the plug arcs under load."
        ),
    ),
    (
        later("Probing"),
        later(
            "Go in from the back of the connector, don't pierce insulation, don't spread "
            "terminals. Keep two bare pins from touching."
        ),
    ),
)
"""Heading and sentence. Common practice of the trade, in our own words; no single source."""


class Cautions(QWidget):
    """A button and, unless folded away, the cautions under it."""

    def __init__(self) -> None:
        super().__init__()
        self.fold = QPushButton("")
        self.fold.setCheckable(True)
        self.fold.setChecked(True)
        self.fold.setAccessibleName(say("show or hide the cautions"))
        self.words = QLabel(
            "".join(f"<p><b>{say(head)}.</b> {say(sentence)}</p>" for head, sentence in CAUTIONS)
        )
        self.words.setWordWrap(True)
        self.words.setAccessibleName(say("cautions"))
        self.fold.toggled.connect(self._on_fold)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.fold)
        layout.addWidget(self.words)
        layout.addStretch(1)
        self._on_fold(shown=True)

    def _on_fold(self, shown: bool) -> None:  # noqa: FBT001 - the form of Qt's signal
        self.words.setVisible(shown)
        self.fold.setText(say("⚠ Cautions  ▾") if shown else say("⚠ Cautions  ▸"))
