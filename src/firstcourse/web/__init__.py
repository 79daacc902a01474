"""Pages in a browser: translate, call a session, show; everything they need comes from the package."""
