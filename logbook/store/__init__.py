"""What one build leaves behind for the next, in the user's cache folder: lost, old or damaged it only costs time."""
