"""The `logbook` command: a module for each of its commands, and what they share.

`main` finds the command, `words` reads its arguments, `say` prints; what is done stands in the stages. A command's module
imports what it needs when it runs, so that `check` starts fast and draws nothing.
"""
