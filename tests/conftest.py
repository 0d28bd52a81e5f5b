"""How hypothesis looks for cases here: the same ones on every run of the build server, and no stop-watch."""

import os

from hypothesis import settings

settings.register_profile("bench", deadline=None)
settings.register_profile("ci", deadline=None, derandomize=True)
settings.load_profile("ci" if os.environ.get("CI") else "bench")
