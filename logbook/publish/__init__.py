"""Pages to files: the only stage that writes."""
