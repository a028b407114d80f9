"""Virtual bench: a fan circuit with a known fault, and a meter on it that speaks a real dialect."""

from meterlog.instruments.virtual.scenario import INVENTED, Scenario
from meterlog.instruments.virtual.scenarios import SCENARIOS, find_scenario
from meterlog.instruments.virtual.simulate import Simulation, simulate
from meterlog.instruments.virtual.truth import TruthSpan

__all__ = [
    "INVENTED",
    "SCENARIOS",
    "Scenario",
    "Simulation",
    "TruthSpan",
    "find_scenario",
    "simulate",
]
