"""How a figure came about, in words."""

Basis = tuple[tuple[str, str], ...]
"""Field and words for each figure that was carried, assumed or otherwise not plain."""
