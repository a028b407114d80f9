"""Commands: one module each, with ``add_parser(subparsers)`` and ``run(options) -> exit code``.

A module imports at its top only what costs nothing, and the rest inside ``run``: asking for help
must not load numpy, Qt or a port.
"""

COMMANDS = {
    "window": "open the window; the same as meterlog without a command",
    "ports": "list ports and profiles, find out which meter is where",
    "check-profile": "check a meter or circuit profile, and say where it belongs",
    "record": "record one or more meters into a folder",
    "review": "judge a recording: what the fan did, which side is bad",
    "find": "find recordings, circuit checks and jobs again",
    "screen": "review many recordings into one table with baselines",
    "amend": "put right a speed, mark or limit on top of a recording",
    "circuit": "find the bad part by readings at the circuit's test points",
    "compare": "set an old motor beside a new one, or beside good ones",
    "job": "fill in a claim's job card, see what is missing",
    "export": "write a recording as CSV tables and a picture of the trace",
    "claim": "make the signed pack of a warranty claim: PDF and zip",
    "join": "put a recording together whose disk failed",
    "import": "turn a CSV trace from elsewhere into a recording",
    "verify": "check that a sealed recording or a pack has not been changed",
    "skew": "measure how much later one meter's times are than another's",
    "virtual": "pretend to be a meter on a fan circuit with a known fault",
    "doctor": "check this computer for measuring, in one report to paste",
    "demo": "show the whole job on the virtual bench, without any hardware",
}
"""Name and one line of each command, in the order in which help shows them."""

__all__ = ["COMMANDS"]
