"""`python -m logbook` is the `logbook` command."""

from logbook.cli import main

main()
