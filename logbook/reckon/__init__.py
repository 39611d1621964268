"""Records to figures: pure functions that know no file, clock, locale or chance."""
