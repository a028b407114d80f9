"""Lets ``python -m meterlog`` do what the ``meterlog`` command does."""

import sys

from meterlog.cli import main

if __name__ == "__main__":
    sys.exit(main())
