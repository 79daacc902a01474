"""Jobs, their revisions, plans, accounts and sessions in a database; it knows no HTTP and no planner."""
