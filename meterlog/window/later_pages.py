"""Later pages: how the pages are made that are loaded when they are turned to."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from meterlog.window.pages import Page
from meterlog.window.work_page import WorkPage

if TYPE_CHECKING:
    from meterlog.window.desk import Desk


def later_pages(desk: Desk) -> Mapping[Page, Callable[[], WorkPage]]:
    """Give what makes each page; nothing is imported before it is called."""

    def job() -> WorkPage:
        from meterlog.window.job_page import JobDesk

        return JobDesk(desk.at_hand)

    def compare() -> WorkPage:
        from meterlog.window.compare_page import CompareDesk

        return CompareDesk(desk.at_hand, desk.session)

    def claim() -> WorkPage:
        from meterlog.window.claim_page import ClaimDesk

        return ClaimDesk(desk.at_hand, desk.session)

    def recordings() -> WorkPage:
        from meterlog.window.recordings_page import RecordingsDesk

        return RecordingsDesk(desk.at_hand, desk.session, desk.open, desk.open_job)

    def keys() -> WorkPage:
        from meterlog.window.keys_page import KeysDesk

        return KeysDesk(desk.keys.own, desk.turn_keys)

    return {
        Page.JOB: job,
        Page.COMPARE: compare,
        Page.CLAIM: claim,
        Page.RECORDINGS: recordings,
        Page.KEYS: keys,
    }
