"""A trawler's trip logs, read, reckoned and published as an archive."""

__version__ = "0.1.0"
