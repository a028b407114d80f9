"""What a port that was asked has answered, for the terminal and as JSON."""

from __future__ import annotations

import shlex

from meterlog.acquire import Fit, PortAnswer


def report(answer: PortAnswer) -> str:
    """Give what is to be said of one port: who answers, a reading, the line that records it."""
    if not answer.fits:
        who = f"{answer.who}: " if answer.who else ""
        return f"{answer.port}  {who}{answer.reason}"
    lines = [f"{answer.port}  {_lead(answer)}  ({answer.took_s:.1f} s)"]
    for fit in answer.fits:
        lines.append(f"  {_fit_words(fit)}")
        if fit.note:
            lines.append(f"    Note: {fit.note}.")
        lines.append(f"    meterlog record --meter {shlex.quote(f'{fit.profile}@{answer.port}')}")
        lines += [f"    {_assigned(fit)}"] if fit.values else []
    return "\n".join(lines)


def _assigned(fit: Fit) -> str:
    """Say that channels need roles: without them all is kept and nothing judged."""
    amps = [value for value in fit.values if value.words.endswith(" A")]
    role, value = ("motor-current", amps[0]) if amps else ("motor-feed", fit.values[0])
    return f"and what each channel is on, such as --assign {role}={fit.profile}.{value.channel}"


def _lead(answer: PortAnswer) -> str:
    words = [answer.who] if answer.who else []
    if answer.simulated:
        words.append("a virtual meter: nothing is measured")
    many = len(answer.fits)
    words.append("one profile fits" if many == 1 else f"{many} profiles fit, choose one")
    return "; ".join(words)


def _fit_words(fit: Fit) -> str:
    reading = ", ".join(f"{value.channel} {value.words}" for value in fit.values)
    return f"answers as {fit.profile} · {reading or 'no reading'}  ({fit.why})"


def answer_json_of(answer: PortAnswer) -> dict[str, object]:
    """Give the same as a JSON object; numbers in volts and amperes."""
    return {
        "port": answer.port,
        "outcome": answer.outcome.value,
        "fits": [
            {
                "profile": fit.profile,
                "title": fit.title,
                "why": fit.why,
                "note": fit.note,
                "meter": f"{fit.profile}@{answer.port}",
                "values": [
                    {
                        "channel": value.channel,
                        "value": value.value,
                        "unit": value.unit,
                        "words": value.words,
                    }
                    for value in fit.values
                ],
            }
            for fit in answer.fits
        ],
        "identity": {
            "maker": answer.identity.maker,
            "model": answer.identity.model,
            "serial": answer.identity.serial,
            "firmware": answer.identity.firmware,
        },
        "simulated": answer.simulated,
        "reason": answer.reason,
        "tried": list(answer.tried),
        "took_s": answer.took_s,
    }
