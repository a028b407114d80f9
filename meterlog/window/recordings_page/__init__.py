"""Recordings page: recordings, circuit checks and jobs found again; currents over their dates."""

from meterlog.window.recordings_page.recordings_desk import RecordingsDesk

__all__ = ["RecordingsDesk"]
