"""Names that nobody knows, explained."""

from logbook.model.codes.entry import Chapter, Where, explained

_KEPT = "It is kept under the name as typed."

NAMES = Chapter(
    id="names",
    title="Names and species",
    entries=(
        explained(
            "grade-unknown",
            "The species has no such grade in the fleet file.",
            _KEPT,
            "- {shot: 18:10, catch: {cod: {large: 3 baskets, huge: 2 baskets}}}",
            "- {shot: 18:10, catch: {cod: {large: 3 baskets, medium: 2 baskets}}}",
            Where.TOWS,
        ),
        explained(
            "ground-unknown",
            "The fleet file lists no such ground. It may be misspelled, or want listing.",
            _KEPT,
            "- {shot: 18:10, ground: The Sadle}",
            "- {shot: 18:10, ground: The Saddle}",
            Where.TOWS,
        ),
        explained(
            "net-unknown",
            "The fleet file lists no such net of the vessel.",
            _KEPT + " What it sweeps is not known.",
            "- {shot: 18:10, net: otter trawl}",
            "- {shot: 18:10, net: rockhopper}",
            Where.TOWS,
        ),
        explained(
            "pen-unknown",
            "The vessel's hold has no such pen in the fleet file.",
            _KEPT,
            "- {shot: 18:10, pen: P3}",
            "- {shot: 18:10, pen: P2}",
            Where.TOWS,
        ),
        explained(
            "port-unknown",
            "The fleet file lists no such port.",
            _KEPT,
            "vessel: Solan Bright\nsailed: 2026-03-04 05:30, Port Kerin\ntows:\n  - 1810-1940, cod 2 baskets",
            "vessel: Solan Bright\nsailed: 2026-03-04 05:30, Port Kerrin\ntows:\n  - 1810-1940, cod 2 baskets",
            Where.WHOLE,
        ),
        explained(
            "species-twice",
            "The same species and grade stands twice in one catch. Added up they might count one haul twice.",
            "The first holds, and the total says that it leaves one out.",
            "- {shot: 18:10, catch: {cod: 3 baskets, COD: 40 kg}}",
            "- {shot: 18:10, catch: {cod: {large: 3 baskets, small: 40 kg}}}",
            Where.TOWS,
        ),
        explained(
            "species-unknown",
            "No species is called so, in the fleet file or in the program's own list.",
            "The weight is kept under the name as typed, in a row of its own and without live weight.",
            "- {shot: 18:10, catch: {haddok: 280 kg}}",
            "- {shot: 18:10, catch: {haddock: 280 kg}}",
            Where.TOWS,
        ),
        explained(
            "vessel-unlisted",
            "The fleet file lists no such vessel. It may be misspelled, or want listing.",
            "The trip is published under the name as typed, without the vessel's pens, nets and speeds.",
            "vessel: Solan Brigth\nsailed: 2026-03-04 05:30\ntows:\n  - 1810-1940, cod 2 baskets",
            "vessel: Solan Bright\nsailed: 2026-03-04 05:30\ntows:\n  - 1810-1940, cod 2 baskets",
            Where.WHOLE,
        ),
    ),
)
