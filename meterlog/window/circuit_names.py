"""CircuitNames: what a circuit profile calls its things, which stands in sentences as it is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass

from meterlog.model import Circuit
from meterlog.window.sentences import know_names


def know_circuit(circuit: Circuit) -> None:
    """Take the words of a circuit, in whatever language whoever wrote its profile has.

    Sentences in which they stand are said in the window's language all the same; those of the
    shipped profiles are translated themselves.
    """
    know_names(_texts(circuit), of="circuit")


def _texts(thing: object) -> Iterator[str]:
    if isinstance(thing, str):
        yield thing
        if thing:
            # As a sentence has it: with a full stop, or begun large.
            yield from (f"{thing}.", thing[0].upper() + thing[1:])
    elif isinstance(thing, (tuple, list, frozenset)):
        for one in thing:
            yield from _texts(one)
    elif is_dataclass(thing):
        for field in fields(thing):
            if field.name != "text":  # of the whole profile
                yield from _texts(getattr(thing, field.name))
