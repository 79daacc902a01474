"""One step for each change of the tables, oldest first."""
