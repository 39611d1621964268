"""The `logbook` command, and `python -m logbook`: started, and ended, without a wait for the garbage collector.

Records hold no cycles, and a check is over in a tenth of a second: to look for garbage while modules are imported and a log is
read, and once more over everything at the end, would cost a tenth of that.
"""

import gc


def start() -> None:
    """Run the command that was typed and leave with its exit status."""
    gc.set_threshold(100_000)
    from logbook.cli.main import main

    try:
        main()
    finally:
        gc.freeze()


if __name__ == "__main__":
    start()
