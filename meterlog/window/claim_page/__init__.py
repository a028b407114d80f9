"""The page of the claim: what goes in, how it is made, and whether a pack is as it was made."""

from meterlog.window.claim_page.claim_desk import ClaimDesk

__all__ = ["ClaimDesk"]
