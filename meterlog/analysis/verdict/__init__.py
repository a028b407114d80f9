"""Verdict: the whole run in one paragraph, and what it found in order of weight."""

from meterlog.analysis.verdict.case import Case
from meterlog.analysis.verdict.run import causes_of, run_verdict

__all__ = ["Case", "causes_of", "run_verdict"]
