"""Text to records: logs and fleet files as people type them."""
