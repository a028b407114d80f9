"""Imported before anything that begins threads: one heap, as the command that records has it."""

from meterlog.commands.one_heap import share_one_heap

share_one_heap()
