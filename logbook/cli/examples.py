"""A few lines of each command as people type them, shown by its --help; a test holds every line to the command's own arguments."""

EXAMPLES = {
    "start": (
        "logbook start --fleet logs 'Solan Bright'",
        "logbook start 'Solan Bright' --logs sample_logs",
        "logbook start 'KI 114' --logs sample_logs --trip 70",
    ),
    "check": (
        "logbook check sample_logs",
        "logbook check sample_logs/fleet.yaml sample_logs/2026",
        "logbook check --brief sample_logs",
        "logbook check --watch sample_logs",
    ),
    "explain": ("logbook explain weight-unreadable", "logbook explain"),
    "reckon": (
        "logbook reckon sample_logs/2026/solan-bright-64.yaml",
        "logbook reckon sample_logs/2026/solan-bright-64.yaml --json --at '2026-03-06 12:00'",
    ),
    "aboard": (
        "logbook aboard sample_logs/2026/ternbank-240.yaml",
        "logbook aboard sample_logs/2026/ternbank-240.yaml --at now",
    ),
    "hail": ("logbook hail sample_logs/2026/solan-bright-64.yaml",),
    "ice": ("logbook ice --vessel 'Solan Bright' --days 7 --catch '40 t' --sea '8 C' --logs sample_logs",),
    "here": (
        "logbook here '58 52N 015 10W' --logs sample_logs",
        "logbook here '58 52N 015 10W' --weeks 2 --within 5 --logs sample_logs",
    ),
    "build": (
        "logbook build sample_logs site",
        "logbook build sample_logs site --edition office --edition crew --edition public",
        "logbook build sample_logs site --watch",
    ),
    "export": ("logbook export sample_logs tables", "logbook export sample_logs tables --edition public"),
    "scrub": (
        "logbook scrub sample_logs/2026/ternbank-240.yaml",
        "logbook scrub sample_logs/2026/ternbank-240.yaml -o copy.txt",
    ),
    "schema": ("logbook schema logs/schema",),
    "completion": (
        "logbook completion bash >> ~/.bashrc",
        "logbook completion zsh >> ~/.zshrc",
        "logbook completion fish > ~/.config/fish/completions/logbook.fish",
        "logbook completion powershell >> $PROFILE",
    ),
}
"""By command."""


def examples_of(command: str) -> str:
    """Return the lines of a command for its help; empty where there are none."""
    lines = EXAMPLES.get(command, ())
    return "\n".join(("examples:", *(f"  {line}" for line in lines))) if lines else ""
