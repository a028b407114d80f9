"""Imported before anything that begins threads: memory as the command that records has it."""

from meterlog.commands.one_heap import share_one_heap
from meterlog.commands.small_pages import use_small_pages

share_one_heap()
use_small_pages()
