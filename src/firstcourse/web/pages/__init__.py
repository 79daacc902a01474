"""Handlers, one module a subject: each takes an `Ask` and gives an answer."""
