"""Figures to pages: templates, notes and charts."""
