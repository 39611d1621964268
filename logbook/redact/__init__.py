"""Records without what an edition does not show: done once, before anything is rendered."""
