"""HeldWork: work in a thread that goes on no further until a test lets it."""

import threading

_PATIENCE_S = 30.0


class HeldWork:
    """Stands in for work; ``answer`` makes of the question what comes of it, or raises.

    Nothing stops it but the test: it is past its last step, where nobody can cancel it any more.
    """

    def __init__(self, answer=lambda asked: asked):
        self.asked = []
        self._answer = answer
        self._gates = {}
        self._open = False

    def _gate(self, asked):
        gate = self._gates.setdefault(asked, threading.Event())
        if self._open:
            gate.set()
        return gate

    def __call__(self, asked):
        """Wait to be let go, then give the answer; for the thread."""
        self.asked.append(asked)
        assert self._gate(asked).wait(_PATIENCE_S), f"{asked} was never let go"
        return self._answer(asked)

    def let_go(self, asked):
        """Let the work on one question go on, now and whenever it is asked again."""
        self._gate(asked).set()

    def let_all_go(self):
        """Let all go that has been asked and will be: a thread may be on its way to ask."""
        # Told first: whoever makes a gate from here on finds it open.
        self._open = True
        for gate in tuple(self._gates.values()):
            gate.set()
