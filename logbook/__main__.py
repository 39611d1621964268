"""`python -m logbook` is the `logbook` command."""

from logbook.cli.main import main

main()
