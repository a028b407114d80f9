"""The page of the job: what the work order says, and what a claim will need."""

from meterlog.window.job_page.job_desk import JobDesk

__all__ = ["JobDesk"]
