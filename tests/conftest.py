"""What every test shares; its place also makes the helpers beside it, such as `tampering`, importable."""

import os
import tempfile

import pytest
from hypothesis import settings

from sharing import FOLDER

# The suite draws the same examples every time, so that a commit that passes once passes everywhere.
# New examples are drawn by `./run test --hypothesis-profile explore`.
settings.register_profile("same", derandomize=True)
settings.register_profile("explore", derandomize=False, print_blob=True)
settings.load_profile("same")


@pytest.hookimpl(trylast=True)
def pytest_configure(config: pytest.Config) -> None:
    """Make the folder in which the processes of one run share what takes long to make."""
    if not hasattr(config, "workerinput"):
        folder = tempfile.TemporaryDirectory(prefix="firstcourse-tests-")
        os.environ[FOLDER] = folder.name
        config.add_cleanup(folder.cleanup)
