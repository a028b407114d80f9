"""NextTestView: the verdict, what to do next and what each outcome would mean."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from meterlog.circuit.cautions import confirming_cautions
from meterlog.evidence.circuit_marks import point_letters
from meterlog.model import Circuit, CircuitVerdict, ProposedTest
from meterlog.window.numbers import number
from meterlog.window.sentences import sentence
from meterlog.window.words import later, say

_NOTHING = later("Nothing within reach would tell more.")


class NextTestView(QWidget):
    """Words only; each kind in a label of its own. ``changed`` is emitted when they are others."""

    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.verdict = self._label(say("verdict: what confirms it, and why it failed"), "strong")
        self.doubted = self._label(say("readings to repeat"), "caution")
        self.what = self._label(say("next test"), "strong")
        self.meaning = self._label(say("what each outcome would mean"), "")
        self.cautions = self._label("cautions", "second")
        self.notes = self._label(say("notes on the check"), "second")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        for label in (
            # What is to be done stands above doubts, which may be long.
            self.verdict, self.what, self.doubted, self.meaning, self.cautions, self.notes,
        ):  # fmt: skip
            column.addWidget(label)
        self.show_words(say("Choose the circuit (C)."))

    @staticmethod
    def _label(name: str, rank: str) -> QLabel:
        label = QLabel("")
        label.setWordWrap(True)
        label.setAccessibleName(name)
        if rank == "strong":
            font = label.font()
            font.setBold(True)
            label.setFont(font)
        elif rank:
            label.setProperty("rank", rank)
        return label

    def show_words(self, words: str) -> None:
        """Show that there is no verdict yet, and why."""
        self._say(what=words)

    def show_verdict(self, circuit: Circuit, verdict: CircuitVerdict) -> None:
        """Show what follows from a check."""
        test = verdict.next_test
        cautions = test.cautions if test else confirming_cautions(circuit, verdict)
        self._say(
            verdict=sentence(verdict.settled_words),
            doubted="\n".join(
                say("REPEAT: {one_}", one_=sentence(one.words)) for one in verdict.doubted
            ),
            what=_what(circuit, test) if test else "" if verdict.settled else say(_NOTHING),
            meaning=_meaning(test) if test else "",
            cautions="\n".join(f"⚠ {sentence(words)}" for words in cautions),
            notes="\n".join(map(sentence, verdict.notes)),
        )

    def _say(self, **words: str) -> None:
        others = False
        for name in ("verdict", "doubted", "what", "meaning", "cautions", "notes"):
            label: QLabel = getattr(self, name)
            said = words.get(name, "")
            others |= said != label.text()
            label.setText(said)
            label.setVisible(bool(said))
        if others:
            self.changed.emit()


def _meaning(test: ProposedTest) -> str:
    """Give a line for each outcome: in a sentence they are hard to tell apart at a glance."""
    return "\n".join(f"• {sentence(one.words)}" for one in test.outcomes) or sentence(test.meaning)


def _what(circuit: Circuit, test: ProposedTest) -> str:
    letter = f"{point_letters(circuit)[test.point]}: " if test.point else ""
    minutes = (
        say("about a minute")
        if test.minutes < 1.5
        else say("about {minutes} min", minutes=number(test.minutes, ".0f"))
    )
    return say(
        "NEXT  {letter}{test} ({minutes})",
        letter=letter,
        test=sentence(test.words),
        minutes=minutes,
    )
