"""Commands: one module each, with ``add_parser(subparsers)`` and ``run(options) -> exit code``.

A module imports at its top only what costs nothing, and the rest inside ``run``: asking for help
must not load numpy, Qt or a port.
"""

COMMANDS = {
    "window": "open the window; the same as meterlog without a command",
    "ports": "list the ports, meter profiles and limits there are",
    "record": "record one or more meters into a folder",
    "review": "judge a recording: what the fan did, and which side is to blame",
    "export": "write a recording as CSV tables and a picture of the trace",
    "import": "turn a CSV trace from elsewhere into a recording",
    "verify": "check that a sealed recording has not been changed",
    "virtual": "pretend to be a meter on a fan circuit with a known fault",
    "demo": "show the whole job on the virtual bench, without any hardware",
}
"""Name and one line of each command, in the order in which help shows them."""

__all__ = ["COMMANDS"]
