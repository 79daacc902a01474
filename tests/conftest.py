"""Its place makes the helpers beside it, such as `tampering`, importable from every test."""
