"""A log written over with stand-ins, so that it can be shown to strangers: every fault kept, and nothing that says whose it is.

Works on the letters of a file line by line, since a log that won't read is just the one that has to be shown.
"""
