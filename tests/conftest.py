"""What holds for all tests: no test asserts an absolute time, so generated examples have no deadline either."""

from __future__ import annotations

from hypothesis import settings

settings.register_profile("house", deadline=None)
settings.load_profile("house")
