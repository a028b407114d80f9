"""What this computer has for meterlog, looked at piece by piece; nothing here changes anything."""

from meterlog.work.doctor.look import Line, Look, State, gathered, worst
from meterlog.work.doctor.whole import look_at_all

__all__ = ["Line", "Look", "State", "gathered", "look_at_all", "worst"]
