"""Condition checks: under what each recording was made, and what a difference does to the current.

The effects are those of trade practice for a centrifugal cabin fan, mostly calculated with a model
motor or from memory; each is named in its words. They are not corrected for: a known difference
widens the uncertainty of the comparison.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from meterlog.model import ConditionCheck, Conditions

SAME, DIFFERS, NOT_STATED, FORBIDS = "same", "differs", "not stated", "forbids"

_WARM_MIN = 3.0
_FAR_MIN = 5.0
_NEAR_K = 5.0
_KELVIN = 273.15


@dataclass(frozen=True, slots=True)
class Weighed:
    """A condition on both sides, and what its difference may do.

    Attributes
    ----------
    check : ConditionCheck
    effect : float, part of the current
        Half-width of what the difference may do to the current; 0 for nothing.
    """

    check: ConditionCheck
    effect: float = 0.0


@dataclass(frozen=True, slots=True)
class _Word:
    """What is known of one condition in words.

    ``effect`` is the part of the current by which two stated words may differ; ``forbidding``
    names words that can't stand beside another.
    """

    name: str
    effect: float
    differs: str
    unsaid: str
    forbidding: frozenset[str] = frozenset()


_FILTER = (
    "a centrifugal fan draws LESS through a clogged filter (by about 12 % at 80 % of the air, 40 %"
    " at 40 %) and more without one"
)
_WORDS = (
    _Word(
        "filter", 0.10, f"{_FILTER}; new against used counts as up to 10 %",
        f"{_FILTER}; say in what state it was", frozenset({"clogged", "none"}),
    ),
    _Word(
        "housing", 0.25,
        "an open housing lets more air through: the current is 15 to 25 % higher",
        "with the housing open the current is 15 to 25 % higher", frozenset({"open"}),
    ),
    _Word(
        "place", 0.25,
        "on the bench a fan with its wheel draws 15 to 25 % more than in the vehicle, a motor"
        " without its wheel 2 to 4 A",
        "on the bench the current is another", frozenset({"vehicle", "bench", "bench, no wheel"}),
    ),
    _Word(
        "air", 0.10, "towards the face most air flows; floor and defrost take 3 to 10 % less",
        "the flaps make 3 to 10 %",
    ),
    _Word(
        "intake", 0.10, "fresh against recirculated air makes up to 10 % either way",
        "fresh or recirculated air makes up to 10 %",
    ),
    _Word(
        "windows", 0.05, "with windows shut the current is up to 5 % lower",
        "windows make up to 5 %",
    ),
    _Word(
        "control", 0.0,
        "an automatic control may change speed or flaps by itself; the steps tell",
        "an automatic control may change the flaps by itself",
    ),
)  # fmt: skip


def weigh(old: Conditions, new: Conditions, *, voltage_known: bool) -> tuple[Weighed, ...]:
    """Hold the conditions of two recordings side by side.

    Parameters
    ----------
    old, new : Conditions
    voltage_known : bool
        The motor voltage was read on both sides, so that the supply's part can be taken out.

    Returns
    -------
    tuple of Weighed
        In order of weight in practice; a condition that nobody stated is there too.

    Source
    ------
    Effects: common trade practice and a model motor (calculated); no published source. Density of
    air: ideal gas, inversely proportional to its absolute temperature.
    """
    return (
        _engine(old, new, voltage_known=voltage_known),
        *(_word(one, getattr(old, one.name), getattr(new, one.name)) for one in _WORDS),
        _ambient(old.ambient_c, new.ambient_c),
        _minutes(old.running_min, new.running_min),
    )


def _plain(text: str) -> str:
    return " ".join(text.lower().split())


def _check(name: str, old: str, new: str, weight: str, words: str) -> ConditionCheck:
    return ConditionCheck(name, old, new, weight, words)


def _engine(old: Conditions, new: Conditions, *, voltage_known: bool) -> Weighed:
    one, other = _plain(old.engine), _plain(new.engine)
    supply = "12.4 V against 13.9 V makes 20 % of current, the commonest false difference"
    taken_out = "; brought to the same motor voltage, that is taken out"
    if not one or not other:
        words = supply + (taken_out if voltage_known else "; say whether the engine ran")
        return Weighed(_check("engine", old.engine, new.engine, NOT_STATED, words))
    if one == other:
        return Weighed(_check("engine", old.engine, new.engine, SAME, ""))
    if voltage_known:
        return Weighed(_check("engine", old.engine, new.engine, DIFFERS, supply + taken_out))
    words = f"{supply}, and the motor voltage was not read; measure both with the engine the same"
    return Weighed(_check("engine", old.engine, new.engine, FORBIDS, words))


def _word(rule: _Word, old: str, new: str) -> Weighed:
    one, other = _plain(old), _plain(new)
    if not one or not other:
        return Weighed(_check(rule.name, old, new, NOT_STATED, rule.unsaid))
    if one == other:
        return Weighed(_check(rule.name, old, new, SAME, ""))
    if rule.forbidding & {one, other}:
        words = f"{rule.differs}; measure both in the same state"
        return Weighed(_check(rule.name, old, new, FORBIDS, words), rule.effect)
    return Weighed(_check(rule.name, old, new, DIFFERS, rule.differs), rule.effect)


def _numbers(
    name: str,
    pair: tuple[float | None, float | None],
    unit: str,
    unsaid: str,
    told: Callable[[float, float], tuple[str, float]],
) -> Weighed:
    old, new = (_sized(one, unit) for one in pair)
    if pair[0] is None or pair[1] is None:
        return Weighed(_check(name, old, new, NOT_STATED, unsaid))
    words, effect = told(pair[0], pair[1])
    return Weighed(_check(name, old, new, DIFFERS if words else SAME, words), effect)


def _sized(value: float | None, unit: str) -> str:
    return "" if value is None else f"{value:g} {unit}"


def _ambient(old: float | None, new: float | None) -> Weighed:
    unsaid = "cold air is denser: 30 K colder makes about 10 % more current"
    return _numbers("ambient", (old, new), "°C", unsaid, _density_words)


def _density_words(old: float, new: float) -> tuple[str, float]:
    if abs(new - old) < _NEAR_K:
        return "", 0.0
    effect = density_change(old, new)
    words = f"the air's density alone makes {100.0 * effect:+.0f} % of current at the new one"
    return words, abs(effect)


def density_change(old_c: float, new_c: float) -> float:
    """Give how much denser the air is at ``new_c`` than at ``old_c``, as a part.

    Source
    ------
    Ideal gas at one pressure; that the fan's load goes with the density: fan laws (ISO 5801).
    """
    return (_KELVIN + old_c) / (_KELVIN + new_c) - 1.0


def _minutes(old: float | None, new: float | None) -> Weighed:
    unsaid = "a motor that warms up draws 3 to 5 % less over 5 to 10 minutes; wait 3 minutes"
    return _numbers("warm-up", (old, new), "min", unsaid, _warm_words)


def _warm_words(old: float, new: float) -> tuple[str, float]:
    cold = min(old, new) < _WARM_MIN
    if not cold or abs(new - old) < _FAR_MIN - _WARM_MIN:
        return "", 0.0
    return "one had not warmed up: 3 to 5 % over 5 to 10 minutes", 0.05
