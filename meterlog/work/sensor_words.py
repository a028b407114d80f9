"""SensorWords: what the user says about clamps, shunts and dividers, as words."""

from __future__ import annotations

import difflib
import math
import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, fields, replace
from typing import TypeVar

from meterlog.model import Role, Sensor, SensorKind
from meterlog.model.errors import UsageError

_Value = TypeVar("_Value")
MOST_TURNS = 100
_NUMBER = r"(\d+(?:\.\d*)?|\.\d+)"
_CLAMP = re.compile(rf"{_NUMBER}(m?)v/{_NUMBER}?(m?)a", re.ASCII)
_SHUNT = re.compile(rf"{_NUMBER}a/{_NUMBER}(m?)v|{_NUMBER}(m?)v/{_NUMBER}a", re.ASCII)
_OHM = re.compile(rf"{_NUMBER}(m|u|µ|μ)?(?:ohms?|ω|Ω)", re.IGNORECASE)
_DIVIDER = re.compile(rf"x?{_NUMBER}(?::1|x)?", re.ASCII)
_ACCURACY = re.compile(
    rf"{_NUMBER}%?(?:\+{_NUMBER}([av]?))?(?:(?:upto|to|bis){_NUMBER}([av]?))?", re.ASCII
)
_COMMA = re.compile(r"\d,\d")
_MILLI = {"": 1.0, "m": 1e-3, "u": 1e-6, "µ": 1e-6, "μ": 1e-6}

_CLAMP_FORM = "Expected the clamp's output, such as 10mV/A (also 1mV/A, 100mV/A)."
_SHUNT_FORM = "Expected such as 100A/60mV, or its resistance such as 0.6mOhm."
_DIVIDER_FORM = "Expected such as 10, where the meter reads a tenth."
_TURNS_FORM = f"Expected a whole number, 1 to {MOST_TURNS}: how often the wire goes through."
_ACCURACY_FORM = (
    "Expected PERCENT+ABSOLUTE, such as 1.5+0.3 for 1.5 % of the reading plus 0.3 A; where its"
    " data sheet says how far it goes, 1.5+0.3 up to 40."
)


@dataclass(frozen=True, slots=True)
class SensorWords:
    """What the user says, one ``ROLE=WORDS`` each.

    Attributes
    ----------
    clamps : sequence of str
        ``motor-current=10mV/A``.
    shunts : sequence of str
        ``motor-current=100A/60mV`` or ``motor-current=0.6mOhm``.
    dividers : sequence of str
        ``motor-feed=10``.
    turns : sequence of str
        ``motor-current=3``: so often the wire goes through the clamp.
    inverted : sequence of str
        Roles alone.
    accuracies : sequence of str
        ``motor-current=1.5+0.3 up to 40``: the sensor's own, added to the meter's, and how far it
        is stated; that may be left out.
    """

    clamps: Sequence[str] = ()
    shunts: Sequence[str] = ()
    dividers: Sequence[str] = ()
    turns: Sequence[str] = ()
    inverted: Sequence[str] = ()
    accuracies: Sequence[str] = ()


def joined(parts: Iterable[SensorWords]) -> SensorWords:
    """Join what was said in several places."""
    whole = tuple(parts)
    return SensorWords(
        **{
            one.name: tuple(words for part in whole for words in getattr(part, one.name))
            for one in fields(SensorWords)
        }
    )


def nearest(word: str, known: Iterable[str]) -> str:
    """Give a hint at the nearest of the known names, and all of them."""
    names = list(known)
    near = difflib.get_close_matches(word, names, 1)
    hint = f"Did you mean {near[0]!r}? " if near else ""
    return f"{hint}There are: {', '.join(names)}."


def role_named(word: str) -> Role:
    """Give the role called ``word``.

    Raises
    ------
    UsageError
        If there is none; names the nearest and all.
    """
    try:
        return Role(word)
    except ValueError:
        raise UsageError(
            "there is no such role.", subject=word, remedy=nearest(word, [r.value for r in Role])
        ) from None


def clamp_ratio(words: str) -> float:
    """Give amperes per volt of a clamp's output such as ``10 mV/A``.

    Raises
    ------
    UsageError
        If the words do not read so.
    """
    match = _CLAMP.fullmatch(_plain(words))
    if match is None:
        raise UsageError("is no clamp's output.", subject=words, remedy=_CLAMP_FORM)
    volts = float(match[1]) * _MILLI[match[2]]
    amperes = float(match[3] or 1.0) * _MILLI[match[4]]
    return _within(words, amperes, volts, (0.1, 1e5), _CLAMP_FORM)


def shunt_ratio(words: str) -> float:
    """Give amperes per volt of a shunt such as ``100A/60mV`` or ``0.6 mOhm``.

    Raises
    ------
    UsageError
        If the words do not read so.
    """
    plain = _plain(words)
    if match := _SHUNT.fullmatch(plain):
        amperes = float(match[1] or match[6])
        volts = float(match[2] or match[4]) * _MILLI[match[3] or match[5] or ""]
    elif match := _OHM.fullmatch(plain):
        amperes, volts = 1.0, float(match[1]) * _MILLI[match[2] or ""]
    else:
        raise UsageError("is no shunt.", subject=words, remedy=_SHUNT_FORM)
    return _within(words, amperes, volts, (0.1, 1e6), _SHUNT_FORM)


def divider_ratio(words: str) -> float:
    """Give volts per volt read behind a divider such as ``10`` or ``10:1``.

    Raises
    ------
    UsageError
        If the words do not read so.
    """
    match = _DIVIDER.fullmatch(_plain(words))
    if match is None:
        raise UsageError("is no divider.", subject=words, remedy=_DIVIDER_FORM)
    return _within(words, float(match[1]), 1.0, (1.0, 1e4), _DIVIDER_FORM)


def _plain(words: str) -> str:
    if _COMMA.search(words):
        raise UsageError(
            "has a comma in a number.",
            subject=words,
            remedy="Write a point as decimal mark, such as 1.5, and no mark between thousands.",
        )
    return words.lower().replace(" ", "")


def _within(words: str, top: float, bottom: float, span: tuple[float, float], form: str) -> float:
    if bottom <= 0.0 or not span[0] <= top / bottom <= span[1]:
        raise UsageError("is not possible.", subject=words, remedy=form)
    return top / bottom


def _turns(words: str) -> int:
    plain = _plain(words)
    if not (plain.isascii() and plain.isdecimal() and 1 <= int(plain) <= MOST_TURNS):
        raise UsageError("is no number of turns.", subject=words, remedy=_TURNS_FORM)
    return int(plain)


def _accuracy(words: str) -> tuple[float, float, float | None, str]:
    """Give percent, absolute part, how far it goes, and the letters of the units, as said."""
    match = _ACCURACY.fullmatch(_plain(words))
    if match is None:
        raise UsageError("is no accuracy.", subject=words, remedy=_ACCURACY_FORM)
    percent, floor = float(match[1]), float(match[2] or 0.0)
    if percent > 100.0 or floor > 1e6 or percent == floor == 0.0:
        raise UsageError("is not possible.", subject=words, remedy=_ACCURACY_FORM)
    top = None if match[4] is None else float(match[4])
    if top is not None and not floor < top <= 1e6:
        raise UsageError(
            "says that the sensor goes no further than its own error.",
            subject=words,
            remedy=_ACCURACY_FORM,
        )
    return percent, floor, top, (match[3] or "") + (match[5] or "")


def _by_role(
    option: str, texts: Sequence[str], read: Callable[[str], _Value], form: str
) -> dict[Role, tuple[_Value, str]]:
    found: dict[Role, tuple[_Value, str]] = {}
    for text in texts:
        name, equals, words = text.partition("=")
        if not (equals and words.strip()):
            raise UsageError(
                "does not say for which role.",
                subject=f"{option} {text}",
                remedy=f"Expected ROLE=..., such as motor-current=... {form}",
            )
        role = role_named(name)
        if role in found:
            raise UsageError("is given twice.", subject=f"{option} {name}", remedy="Once only.")
        try:
            found[role] = read(words), _tidy(words)
        except UsageError as error:
            raise UsageError(
                error.message, subject=f"{option} {text}", remedy=error.remedy
            ) from None
    return found


def _tidy(words: str) -> str:
    return " ".join(words.split())


def sensors(words: SensorWords, scales: Mapping[Role, float]) -> dict[Role, Sensor]:
    """Turn what the user says into a Sensor for each role that anything is said about.

    Parameters
    ----------
    words : SensorWords
    scales : mapping of Role to float, unit of the role per unit the meter reads
        For anything else than clamps, shunts and dividers; may be negative, not 0.

    Raises
    ------
    UsageError
        If something does not read as expected, or things said about one role contradict each
        other.
    """
    kinds = {
        SensorKind.CLAMP: _by_role("--clamp", words.clamps, clamp_ratio, _CLAMP_FORM),
        SensorKind.SHUNT: _by_role("--shunt", words.shunts, shunt_ratio, _SHUNT_FORM),
        SensorKind.DIVIDER: _by_role("--divider", words.dividers, divider_ratio, _DIVIDER_FORM),
    }
    found: dict[Role, Sensor] = {}
    for kind, by_role in kinds.items():
        for role, (ratio, said) in by_role.items():
            _refuse_second(role, found, kind.value)
            found[role] = Sensor(kind, ratio, words=_spaced(said))
    for role, scale in scales.items():
        _refuse_second(role, found, "scale")
        if scale == 0.0 or not math.isfinite(scale):
            raise UsageError("a scale can't be 0.", subject=role.value)
        found[role] = Sensor(ratio=abs(scale), inverted=scale < 0.0)
    return _with_rest(words, found)


def _spaced(said: str) -> str:
    """Write ``10mV/A`` as ``10 mV/A``; what has a space already stays."""
    return said if " " in said else re.sub(r"^([\d.]+)([a-zA-ZµΩ].*/.*)$", r"\1 \2", said)


def _refuse_second(role: Role, found: Mapping[Role, Sensor], what: str) -> None:
    if role in found:
        before = str(found[role]) or "another scale"
        raise UsageError(
            f"is said to be behind a {what}, but also behind {before}.",
            subject=role.value,
            remedy="Say one of --clamp, --shunt, --divider and --scale.",
        )


def _with_rest(words: SensorWords, found: dict[Role, Sensor]) -> dict[Role, Sensor]:
    """Add turns, polarity and the sensor's own accuracy."""
    for role, (turns, _) in _by_role("--turns", words.turns, _turns, _TURNS_FORM).items():
        sensor = found.get(role, Sensor())
        if sensor.kind in (SensorKind.SHUNT, SensorKind.DIVIDER):
            raise UsageError(
                f"turns go through a clamp, not through a {sensor.kind.value}.",
                subject=role.value,
                remedy="Leave out --turns.",
            )
        found[role] = replace(sensor, turns=turns)
    for name in words.inverted:
        role = role_named(name)
        sensor = found.get(role, Sensor())
        if sensor.inverted:
            raise UsageError(
                "is inverted twice.",
                subject=role.value,
                remedy="A negative --scale inverts already; --invert only once.",
            )
        found[role] = replace(sensor, inverted=True)
    own = _by_role("--sensor-accuracy", words.accuracies, _accuracy, _ACCURACY_FORM)
    for role, ((percent, floor, top, units), said) in own.items():
        sensor = found.get(role, Sensor())
        if role.quantity is not None and set(units) - {role.quantity.unit.lower()}:
            raise UsageError(
                f"{role.value} is told in {role.quantity.unit}, also behind its sensor.",
                subject=f"--sensor-accuracy {said}",
                remedy=_ACCURACY_FORM,
            )
        found[role] = replace(sensor, own_percent=percent, own_floor=floor, own_top=top)
    return found
