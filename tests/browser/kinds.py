"""A page of every kind, of the sample archive's office edition."""

KINDS = (
    "index.html",
    "trips/solan-bright-2026-10-06.html",
    "trips/ternbank-2026-11-19.html",
    "vessels/solan-bright.html",
    "species/haddock.html",
    "grounds/the-saddle.html",
    "seasons/2025.html",
    "weeks/2026-w48.html",
    "gear.html",
    "reckoning.html",
    "problems.html",
    "problem-codes.html",
    "keeping.html",
    "promises.html",
    "publishing.html",
    "board.html",
    "find.html",
)
