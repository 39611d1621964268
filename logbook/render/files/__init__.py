"""Files for other programs: tables, what their columns mean, trips, tracks, fasts, a feed and a calendar of landings."""
