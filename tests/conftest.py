"""What every test shares; its place also makes the helpers beside it, such as `tampering`, importable."""

from hypothesis import settings

# The suite draws the same examples every time, so that a commit that passes once passes everywhere.
# New examples are drawn by `./run test --hypothesis-profile explore`.
settings.register_profile("same", derandomize=True)
settings.register_profile("explore", derandomize=False, print_blob=True)
settings.load_profile("same")
