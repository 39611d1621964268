"""How fast fish ages by how warm it is: the published rate, and its sum over a stretch of time."""

COLDEST = -10.0


def rate(celsius: float) -> float:
    """Return how many times faster fish ages than at 0 °C: (1 + 0.1 T)², 0 at -10 °C and below.

    Source:
        Huss (1995), FAO Fisheries Technical Paper 348; Olley and Ratkowsky. For fresh fish from about -2 to 15 °C.
    """
    return (1 + 0.1 * celsius) ** 2 if celsius > COLDEST else 0.0


def linear_days(start_c: float, end_c: float, days: float) -> float:
    """Return the equivalent days of a stretch in which the temperature goes evenly from one value to another, exactly."""
    if start_c > end_c:
        start_c, end_c = end_c, start_c
    if end_c <= COLDEST:
        return 0.0
    if start_c < COLDEST:
        days *= (end_c - COLDEST) / (end_c - start_c)
        start_c = COLDEST
    a, b = 1 + 0.1 * start_c, 1 + 0.1 * end_c
    return days * (a * a + a * b + b * b) / 3
