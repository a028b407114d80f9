"""The page Before / after: the old part against the new one."""

from meterlog.window.compare_page.compare_desk import CompareDesk

__all__ = ["CompareDesk"]
