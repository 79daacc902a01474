"""One way in: a `Session` over a job document, ports for files and store, and results as frozen values."""
