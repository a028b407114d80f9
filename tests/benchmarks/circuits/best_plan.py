"""Best plan: the fewest tests, on average, that any plan could do with, in a game without chance.

``python tests/benchmarks/circuits/best_plan.py [--circuit NAME ...]``

In the game every healthy figure is known, nothing slips or comes and goes, and a reading falls into
one of steps that are four standard uncertainties wide. It ends as soon as one unit has 95 % of what
is left, or nothing tells more. All plans are gone through (dynamic programming over what can be
left: Bellman 1957; branches that can't get better are cut off), so no plan whatever needs fewer
tests in this game. The real task, with noise, unknown figures and the rule that no one reading may
carry a verdict, is harder. Beside it stand the plan that always takes the test that tells most,
and the entropy bound for the same game: they show how much of the distance from the bound no
choice of tests could make up for.

Source of the comparison: a greedy plan need not be the best one, and the best is found by search
only in small cases: Hyafil and Rivest, Inf. Process. Lett. 5 (1976) 15 (from memory).
"""

from __future__ import annotations

import argparse
import sys
import time
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).resolve().parents[3]))

from tally import table

from meterlog.circuit.meter_error import usual_standard_u
from meterlog.circuit.predictions import Predictions
from meterlog.circuit.states import between_states, plain_states, seen_states
from meterlog.circuit.taken import misfit_table
from meterlog.circuit.unit_sets import NO_FAULT
from meterlog.model import Circuit, CircuitState, Sign
from meterlog.profile.catalogue import load_circuit

SHIPPED = Path(__file__).resolve().parents[3] / "profiles" / "circuits"
SURE = 0.95
STEP_SD = 4.0
MOST_SETS = 60_000
"""So many different things left are looked into; then what is known so far is told."""


@dataclass
class Game:
    """What every test shows under everything that may be bad.

    ``codes``: int[tests, things], the result of each; ``weights``: float[things], sum 1; ``units``:
    bool[units, things].
    """

    codes: np.ndarray
    weights: np.ndarray
    units: np.ndarray
    most_sets: int = MOST_SETS
    seen: dict[bytes, float] = field(default_factory=dict)
    cut: bool = False

    def ended(self, some: np.ndarray) -> bool:
        """Tell whether one unit has nearly all of what is left."""
        share = self.units[:, some] @ self.weights[some]
        return bool(share.max() > SURE * self.weights[some].sum())

    def splits(self, some: np.ndarray) -> list[tuple[float, float, list[np.ndarray]]]:
        """Give for each test that splits what is left: tests needed at least, bits, the parts."""
        found, met = [], set()
        whole = self.weights[some].sum()
        before = self._entropy(some)
        for codes in self.codes[:, some]:
            _, first, part = np.unique(codes, return_index=True, return_inverse=True)
            if len(first) < 2:
                continue
            rank = np.argsort(np.argsort(first))[part]  # the same parts have the same numbers
            if (key := rank.astype(np.int16).tobytes()) in met:
                continue
            met.add(key)
            parts = [some[rank == at] for at in range(len(first))]
            shares = [self.weights[one].sum() / whole for one in parts]
            after = sum(s * self._entropy(one) for s, one in zip(shares, parts, strict=True))
            if before - after < 1e-9:
                continue
            least = 1.0 + sum(
                s for s, one in zip(shares, parts, strict=True) if not self.finished(one)
            )
            found.append((least, before - after, parts))
        return found

    def finished(self, some: np.ndarray) -> bool:
        """Tell whether the game has ended, or nothing splits what is left."""
        if self.ended(some):
            return True
        part = self.codes[:, some]
        return bool((part == part[:, :1]).all())

    def _entropy(self, some: np.ndarray) -> float:
        """Give the entropy, in bits, of which set of units is bad."""
        names = np.packbits(self.units[:, some], axis=0).T
        _, own = np.unique(names, axis=0, return_inverse=True)
        share = np.bincount(own.ravel(), self.weights[some])
        share = share[share > 0.0] / share.sum()
        return float(-(share * np.log2(share)).sum())

    def best(self, some: np.ndarray, below: float = np.inf) -> float:
        """Give the tests of the best plan; where it is not below ``below``, some bound of it."""
        if self.finished(some):
            return 0.0
        key = some.tobytes()
        if key in self.seen:
            return self.seen[key]
        options = sorted(self.splits(some), key=lambda one: (one[0], -one[1]))
        if not options:
            self.seen[key] = 0.0
            return 0.0
        if len(self.seen) > self.most_sets:
            self.cut = True
            return self.greedy(some)[0]
        whole, least = self.weights[some].sum(), np.inf
        for bound, _, parts in options:
            if bound >= min(least, below) - 1e-12:
                break
            total = bound
            for part in sorted(parts, key=len):
                if self.finished(part):
                    continue
                share = self.weights[part].sum() / whole
                room = (min(least, below) - total) / share + 1.0
                total += share * (self.best(part, room) - 1.0)
                if total >= min(least, below) - 1e-12:
                    break
            else:
                least = total
        if least < below:
            self.seen[key] = least
            return float(least)
        return float(min(least, below))

    def greedy(self, some: np.ndarray) -> tuple[float, float, float]:
        """Give tests and entropy at the end if always that is made which tells most; most bits."""
        if self.finished(some) or not (options := self.splits(some)):
            return 0.0, self._entropy(some), 0.0
        _, most, parts = max(options, key=lambda one: one[1])
        tests, left, whole = 1.0, 0.0, self.weights[some].sum()
        for part in parts:
            share = self.weights[part].sum() / whole
            more, end, bits = self.greedy(part)
            tests, left, most = tests + share * more, left + share * end, max(most, bits)
        return tests, left, most


def game_of(circuit: Circuit) -> tuple[Game, list[np.ndarray]]:
    """Give the game of a circuit, and what each complaint leaves to begin with."""
    predictions = Predictions(circuit)
    cells = predictions.cells
    stays = np.flatnonzero([not cells.hypotheses[at].comes_and_goes for at in cells.hypothesis])
    rows = cells.row[stays]
    misfit = misfit_table([point.kind for point in circuit.points])
    codes = []
    for state in dict.fromkeys((*plain_states(circuit), *between_states(circuit))):
        predicted = predictions.at(state)
        mean = predicted.mean[rows]
        ghost = predicted.ghost_sd(rows[:, None], np.arange(mean.shape[1]))
        sd = np.sqrt(
            usual_standard_u(circuit, mean) ** 2
            + (misfit[0] + misfit[1] * np.abs(mean) + ghost) ** 2
            + (misfit[2] + misfit[3] * np.abs(mean)) ** 2
        )
        codes += list(_steps(mean, sd).T)
    top, low = max(circuit.speeds), min(one for one in circuit.speeds if one)
    complaint = []
    for state in seen_states(circuit):
        for sign, chances in predictions.at(state).signs.items():
            if sign is Sign.TAP:
                continue
            shown = chances[rows].argmax(axis=1)
            codes.append(shown)
            if sign is Sign.FAN and state in (CircuitState("on", top), CircuitState("on", low)):
                complaint.append(shown)
    names = [*(unit.name for unit in circuit.units), NO_FAULT]
    sets = [cells.hypotheses[at].units or {NO_FAULT} for at in cells.hypothesis[stays]]
    units = np.array([[name in one for one in sets] for name in names])
    table_of = np.array(codes, dtype=np.int64)
    # Things that nothing tells apart, with the same units, are one thing.
    _, first, own = np.unique(
        np.concatenate([table_of, units]).T, axis=0, return_index=True, return_inverse=True
    )
    weights = np.bincount(own.ravel(), np.exp(cells.log_prior[stays]))
    game = Game(table_of[:, first], weights / weights.sum(), units[:, first])
    begun = np.array(complaint)[:, first]
    _, part = np.unique(begun, axis=1, return_inverse=True)
    return game, [np.flatnonzero(part.ravel() == at) for at in range(part.max() + 1)]


def _steps(mean: np.ndarray, sd: np.ndarray) -> np.ndarray:
    """Cut each test's results, float[things, tests], into steps as wide as they can be told."""
    found = np.zeros(mean.shape, dtype=np.int64)
    for at in range(mean.shape[1]):
        order = np.argsort(mean[:, at], kind="stable")
        start, code = -np.inf, -1
        for one in order:
            if mean[one, at] > start + STEP_SD * sd[one, at]:
                start, code = mean[one, at], code + 1
            found[one, at] = code
    return found


def line(name: str, most_sets: int) -> tuple[str, ...]:
    """Play one circuit's game."""
    begun = time.process_time()
    game, starts = game_of(load_circuit(str(SHIPPED / f"{name}.toml")))
    game.most_sets = most_sets
    shares = [float(game.weights[one].sum()) for one in starts]
    before = after = greedy = most = best = 0.0
    for share, some in zip(shares, starts, strict=True):
        tests, left, bits = game.greedy(some)
        before += share * game._entropy(some)
        greedy, after, most = greedy + share * tests, after + share * left, max(most, bits)
        best += share * game.best(some)
    bound = (before - after) / most
    return (
        name,
        str(len(game.weights)),
        f"{before:.2f}",
        f"{after:.2f}",
        f"{most:.2f}",
        f"{bound:.2f}",
        f"{'<= ' if game.cut else ''}{best:.2f}",
        f"{greedy:.2f}",
        f"{best / bound:.2f}",
        f"{greedy / best:.2f}",
        f"{time.process_time() - begun:.0f}",
    )


def main() -> int:
    """Print what the best plan needs on each circuit."""
    parser = argparse.ArgumentParser(description="the fewest tests any plan needs, without noise")
    parser.add_argument("--circuit", nargs="*", metavar="NAME", help="only these")
    parser.add_argument(
        "--sets", type=int, default=MOST_SETS, help=f"so many are looked into ({MOST_SETS})"
    )
    options = parser.parse_args()
    names = options.circuit or [path.stem for path in sorted(SHIPPED.glob("*.toml"))]
    header = ("circuit", "things", "H0", "H1", "C", "bound", "best plan", "greedy")
    rows = [(*header, "best/bound", "greedy/best", "CPU s")]
    rows += [line(name, options.sets) for name in names]
    print("\n".join(table(rows)))
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
