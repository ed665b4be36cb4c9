from packgen.folding.program import HALF, QUARTER, Fasten, Fold, Program, Scheme, Trim, equal

SCHEME = Scheme(
    title="Octavo",
    about="One sheet folded three times, stapled, and cut open at two edges: 16 pages, each an eighth of the sheet.",
    programs=(
        Program(
            columns=equal(4),
            rows=equal(2),
            orientation="landscape",
            laid="back",
            # The order of J. B. Nicholson, A Manual of the Art of Bookbinding (1856), chapter "Folding".
            steps=(
                Fold(HALF, "right"),
                Fold(HALF, "top"),
                Fold(QUARTER, "left"),
                Fasten(),
                Trim(("top", "right")),
            ),
            spine="left",
        ),
    ),
)
