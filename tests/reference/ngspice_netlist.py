"""Circuits as netlists of ngspice (Debian package ``ngspice``), written from the profile alone.

Nothing here uses the solver that is compared: what a fault and a state do to an element is said
again in :func:`values_of`, and each law again as an expression of ngspice. Resistors, voltage
sources and the field-effect transistor (MOS level 1) are ngspice's own; motor, regulator, chopper
and control head are its behavioural sources. A figure that changes from case to case is altered in
place, so that one process runs many cases.
"""

import re
import shutil
import subprocess
from dataclasses import dataclass, field

import numpy as np

from meterlog.model import CircuitState, ElementKind, FaultMode
from meterlog.model.element_kinds import KINDS

PROGRAM = shutil.which("ngspice")
MISSING = "ngspice is not installed. On Debian: sudo apt-get install ngspice (make setup does it)"
NOTHING_OHM = 1e15
"""A meter or a jumper that is not there."""
OPEN, SHORTED, JUMPER, NO_SUPPLY, LEAK = 1e9, 0.02, 0.02, 1e5, 1e10
OPTIONS = "reltol=1e-7 vntol=1e-10 abstol=1e-14 gmin=1e-16 itl1=50 itl2=100"
EASIER = (0.02, 0.2, 1.0)
"""Loop gains that lead to an operating point, each as a part of what it is."""
_RESISTORS = {
    ElementKind.BATTERY,
    ElementKind.FUSE,
    ElementKind.WIRE,
    ElementKind.CONNECTION,
    ElementKind.GROUND,
    ElementKind.RESISTOR,
    ElementKind.COIL,
    ElementKind.SWITCH,
    ElementKind.CONTACT,
}


@dataclass(frozen=True)
class Case:
    """One circuit to be solved: what is broken, how it is set, where the meter is."""

    fault: tuple[str, FaultMode, float | None] | None = None
    state: CircuitState = field(default_factory=CircuitState)
    meter: tuple[str, float] | None = None
    """Node, against the battery negative post, and ohms."""


def values_of(circuit, case):
    """Give the figures of all elements in a case, by element and figure."""
    state = case.state
    values = {}
    for element in circuit.elements:
        own = {**KINDS[element.kind].usual, **element.figures}
        sealed = None
        if element.kind is ElementKind.HEAD:
            sealed = _broken_head(case, element)
        elif case.fault and case.fault[0] == element.name:
            _break(own, element.kind, *case.fault[1:])
        if element.kind is ElementKind.BATTERY and state.key == "engine":
            own["emf_v"] = own["charging_v"]
        if element.kind is ElementKind.HEAD:
            _command(own, element, state, sealed)
        if _is_off(element, state):
            own["ohm"] = OPEN
        values.update({(element.name, name): value for name, value in own.items()})
    return values


def _break(own, kind, mode, severity):
    if mode is FaultMode.OPEN:
        if kind is ElementKind.TRANSISTOR:
            own["gain_a_per_v2"] = 1e-12
        else:
            own["ohm"] = OPEN
    elif mode is FaultMode.RESISTIVE:
        own["ohm"] += severity
    elif mode is FaultMode.SHORTED:
        own.update({"held": 1.0} if kind is ElementKind.CONTACT else {"bypass_ohm": SHORTED})
    elif mode is FaultMode.SEIZED:
        own["no_load_a"] = 1e6
    elif mode is FaultMode.DRAGGING:
        own["no_load_a"] *= severity
    elif mode is FaultMode.FLAT:
        own["emf_v"] = own["charging_v"] = severity
    else:
        raise AssertionError(f"{kind} {mode}: not known to the referee")


def _broken_head(case, element):
    if not case.fault or case.fault[0] != element.name:
        return None
    return 0.0 if case.fault[1] is FaultMode.NO_DRIVE else case.fault[2]


def _command(own, element, state, sealed):
    own["closed_loop"] = float(len(element.nodes) == 3)
    own["drive_v"] = element.speeds.get(state.speed, 0.0)
    if sealed is not None:
        own["closed_loop"], own["drive_v"] = 0.0, sealed
    if state.speed == 0:
        own["closed_loop"] = 0.0
    if state.key == "off":
        own.update(closed_loop=0.0, drive_v=0.0, ohm=NO_SUPPLY)


def _is_off(element, state):
    if element.plug and element.plug in state.unplugged:
        return True
    if element.name in state.pulled:
        return True
    if element.kind is not ElementKind.SWITCH:
        return False
    right_key = not element.closed_keys or state.key in element.closed_keys
    right_speed = not element.closed_speeds or state.speed in element.closed_speeds
    return not (right_key and right_speed)


class Netlist:
    """One circuit for ngspice."""

    def __init__(self, circuit, jumpers=()):
        self.circuit = circuit
        self.node = {node.name: f"n{at}" if at else "0" for at, node in enumerate(circuit.nodes)}
        self.number = {element.name: at for at, element in enumerate(circuit.elements)}
        self.jumpers = {pair: f"rj{at}" for at, pair in enumerate(jumpers)}
        self.meters = {node: f"rm{name}" for node, name in self.node.items() if name != "0"}
        self.contacts = [e for e in circuit.elements if e.kind is ElementKind.CONTACT]
        self.coils = {e.relay: e for e in circuit.elements if e.kind is ElementKind.COIL}

    def lines(self):
        """Give the netlist with the figures of the circuit in order, speed 0."""
        made = [f"* {self.circuit.name}", f".options {OPTIONS}"]
        for name, meter in self.meters.items():
            made.append(f"rl{self.node[name]} {self.node[name]} 0 {LEAK:g}")
            made.append(f"{meter} {self.node[name]} 0 {NOTHING_OHM:g}")
        for (first, second), name in self.jumpers.items():
            made.append(f"{name} {self.node[first]} {self.node[second]} {NOTHING_OHM:g}")
        values = values_of(self.circuit, Case())
        for element in self.circuit.elements:
            made += self._element(element, values)
        return made

    def _element(self, element, values):
        at = self.number[element.name]
        nodes = [self.node[node] for node in element.nodes]
        if element.kind is ElementKind.BATTERY:
            return [
                f"v{at} in{at} {nodes[1]} {values[element.name, 'emf_v']!r}",
                f"r{at} {nodes[0]} in{at} {values[element.name, 'ohm']!r}",
            ]
        if element.kind in _RESISTORS:
            return [f"r{at} {nodes[0]} {nodes[1]} {values[element.name, 'ohm']!r}"]
        lines = []
        if "bypass_ohm" in KINDS[element.kind].usual:
            lines.append(f"ry{at} {nodes[0]} {nodes[1]} {OPEN!r}")
        if element.kind is ElementKind.TRANSISTOR:
            gain, threshold = (values[element.name, f] for f in ("gain_a_per_v2", "threshold_v"))
            drain, source, gate = nodes
            # The bulk far below all, so that its diodes never conduct; no body effect.
            return [
                *lines,
                f"vb{at} bulk{at} 0 -100",
                f"m{at} {drain} {gate} {source} bulk{at} fet{at} w=1u l=1u",
                f".model fet{at} nmos (level=1 kp={gain!r} vto={threshold!r} gamma=0 lambda=0"
                " is=1e-30 phi=0.6)",
            ]
        if element.kind is ElementKind.HEAD:
            lines.append(f"r{at} {nodes[0]} w{at} {values[element.name, 'ohm']!r}")
        for figure, text in self._parameters(element, values):
            lines.append(f"v{at}_{figure} p{at}_{figure} 0 {text!r}")
        return lines + [f"b{at}{end} {law}" for end, law in enumerate(self._laws(element))]

    def _parameters(self, element, values):
        """Give the figures of a behavioural element, which are voltages of nodes of their own."""
        return [
            (figure, value)
            for (owner, figure), value in values.items()
            if owner == element.name and figure != "bypass_ohm"
        ]

    def _laws(self, element):
        at, nodes = self.number[element.name], [self.node[node] for node in element.nodes]

        def p(figure):
            return f"v(p{at}_{figure})"

        if element.kind is ElementKind.MOTOR:
            across = f"v({nodes[0]},{nodes[1]})"
            over = f"(abs({across})-{p('no_load_a')}*{p('ohm')})"
            root = f"sqrt(1+4*{p('fan_a_per_v2')}*{p('ohm')}*max({over},0))"
            # R c E² + E - over = 0, and I = (V - E) / R
            emf = f"(({root}-1)/(2*{p('fan_a_per_v2')}*{p('ohm')}))"
            amps = f"(({over})>0 ? (abs({across})-{emf})/{p('ohm')} : abs({across})/{p('ohm')})"
            return [f"{nodes[0]} {nodes[1]} i=sgn({across})*{amps}"]
        if element.kind is ElementKind.HEAD:
            if len(nodes) < 3:
                return [f"w{at} {nodes[1]} v={p('drive_v')}"]
            span = f"({p('most_v')}-{p('least_v')})"
            steep = f"4*{p('loop_gain')}/{span}*(v({nodes[2]},{nodes[1]})-{p('drive_v')})"
            wanted = f"({p('least_v')}+{span}/(1+exp(-({steep}))))"
            return [f"w{at} {nodes[1]} v={p('closed_loop')}>0.5 ? {wanted} : {p('drive_v')}"]
        supply, out, ground, command = nodes
        if element.kind is ElementKind.REGULATOR:
            lack = f"({p('volts_per_volt')}*v({command},{ground})-v({out},{ground}))"
            part = f"min(max({p('loop_gain')}*{lack},0),1)"
            return [f"{supply} {out} i=v({supply},{out})/{p('ohm')}*{part}"]
        raw = f"((v({command},{ground})-{p('start_v')})/({p('full_v')}-{p('start_v')}))"
        duty = f"min(max({raw},0),1)"
        # Cut off at no duty, all there from a duty of a hundredth on.
        amps = f"min({duty}*100,1)*({duty}*v({supply},{ground})-v({out},{ground}))/{p('ohm')}"
        return [
            f"{supply} {out} i={duty}*{amps}",
            f"{ground} {out} i=(1-{duty})*{amps}",
        ]

    def settings(self, case, closed):
        """Give what a case sets: command of ngspice by what it is set to."""
        found = dict.fromkeys((*self.meters.values(), *self.jumpers.values()), NOTHING_OHM)
        if case.meter:
            found[self.meters[case.meter[0]]] = case.meter[1]
        for pair in case.state.jumpers:
            found[self.jumpers[pair]] = JUMPER
        values = values_of(self.circuit, case)
        for element in self.circuit.elements:
            at = self.number[element.name]
            for figure in (*KINDS[element.kind].figures, *KINDS[element.kind].usual):
                value = values[element.name, figure]
                if figure == "ohm" and element.kind is ElementKind.CONTACT:
                    found[f"r{at}"] = value if element.name in closed else OPEN
                elif figure == "ohm" and element.kind in _RESISTORS:
                    found[f"r{at}"] = value
                elif figure == "emf_v":
                    found[f"v{at}"] = value
                elif figure == "bypass_ohm":
                    found[f"ry{at}"] = value
                elif element.kind is ElementKind.TRANSISTOR:
                    found[f"fet{at} {'vto' if figure == 'threshold_v' else 'kp'}"] = value
                elif element.kind not in _RESISTORS:
                    found[f"v{at}_{figure}"] = value
            if element.kind is ElementKind.HEAD:
                found[f"r{at}"] = values[element.name, "ohm"]
                for figure in ("drive_v", "closed_loop"):
                    found[f"v{at}_{figure}"] = values[element.name, figure]
        return found

    def pulled(self, case, volts):
        """Tell which contacts are closed: welded ones, and those whose coil carries enough."""
        values = values_of(self.circuit, case)
        at = {node.name: place for place, node in enumerate(self.circuit.nodes)}
        closed = set()
        for contact in self.contacts:
            coil = self.coils[contact.relay]
            first, second = (volts[at[node]] for node in coil.nodes)
            amps = abs(first - second) / values[coil.name, "ohm"]
            needed = contact.figures["pull_in_v"] / coil.figures["ohm"]
            if values[contact.name, "held"] > 0.5 or amps >= needed:
                closed.add(contact.name)
        return frozenset(closed)

    def solve(self, cases, folder, guesses=None, *, first=False):
        """Run cases; float64[cases, nodes] with NaN where ngspice found no operating point.

        And bool[cases]: True where it found one from ``guesses``, float64[cases, nodes], alone.

        The relays' contacts are open first; those that are pulled in are closed, once and for all,
        and the cases concerned run again. A case in which ngspice finds no operating point is led
        to it by smaller loop gains, each solution of ngspice being the next one's initial guess.
        With ``first`` the guess, of a single case, is what it begins with.
        """
        count = len(cases)
        closed = [
            frozenset(
                c.name for c in self.contacts if values_of(self.circuit, case)[c.name, "held"] > 0.5
            )
            for case in cases
        ]
        volts = np.full((count, len(self.circuit.nodes)), np.nan)
        guessed = np.zeros(count, dtype=bool)
        waiting = list(range(count))
        while waiting:
            begun = (1.0, guesses[0]) if first else ()
            shut = [closed[at] for at in waiting]
            found = self._run([cases[at] for at in waiting], shut, folder, *begun)
            for row in np.flatnonzero(np.isnan(found).any(axis=1)):
                at = waiting[row]
                found[row] = self._led(cases[at], closed[at], folder)
                if np.isnan(found[row]).any() and guesses is not None:
                    found[row] = self._run([cases[at]], [closed[at]], folder, 1.0, guesses[at])[0]
                    guessed[at] = True
            volts[waiting] = found
            again = []
            for at, row in zip(waiting, found, strict=True):
                if np.isnan(row).any():
                    continue
                now = closed[at] | self.pulled(cases[at], row)
                if now != closed[at]:
                    closed[at] = now
                    again.append(at)
            waiting = again
        return volts, guessed

    def _led(self, case, closed, folder):
        start = None
        for gain in EASIER:
            found = self._run([case], [closed], folder, gain, start)[0]
            if not np.isnan(found).any():
                start = found
        return found

    def _run(self, cases, closed, folder, gain=1.0, start=None):
        if PROGRAM is None:
            raise RuntimeError(MISSING)
        nodes = [name for name in self.node.values() if name != "0"]
        shown = " ".join(f"v({name})" for name in nodes)
        control = [".control", "set numdgt=14", "set width=400"]
        before = {}
        for at, (case, shut) in enumerate(zip(cases, closed, strict=True)):
            now = self.settings(case, shut)
            now.update({n: gain * v for n, v in now.items() if n.endswith("_loop_gain")})
            for name, value in now.items():
                if before.get(name) != value:
                    verb = "altermod" if " " in name else "alter"
                    control.append(f"{verb} {name} = {float(value)!r}")
            before = now
            control += [f"echo case {at}", "op", f"print {shown}", "destroy all"]
        control += ["quit 0", ".endc"]
        guesses = []
        if start is not None:
            pairs = zip(nodes, start[1:], strict=True)
            guesses = [".nodeset " + " ".join(f"v({n})={float(v)!r}" for n, v in pairs)]
        text = "\n".join([*self.lines(), *guesses, *control, ".end", ""])
        file = folder / "cases.cir"
        file.write_text(text, encoding="ascii")
        done = subprocess.run(
            [PROGRAM, "-b", str(file)], capture_output=True, text=True, timeout=600, check=False
        )
        return self._read(done.stdout, len(cases), nodes)

    def _read(self, printed, count, nodes):
        volts = np.full((count, len(nodes) + 1), np.nan)
        column = {name: at + 1 for at, name in enumerate(nodes)}
        row = -1
        for line in printed.splitlines():
            if line.startswith("case "):
                row = int(line[5:])
                volts[row, 0] = 0.0
            elif found := re.fullmatch(r"v\((\w+)\) = (\S+)\s*", line):
                volts[row, column[found[1]]] = float(found[2])
        return volts
