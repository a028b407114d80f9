"""Settings shared by all tests."""

import os

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ.setdefault("TZ", "UTC")

from hypothesis import HealthCheck, settings

settings.register_profile(
    "house",
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture],
    print_blob=True,
)
settings.load_profile("house")
