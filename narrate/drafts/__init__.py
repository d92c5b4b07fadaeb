"""Narratives as files that the analyst owns: written as drafts, and never overwritten once she changed a word."""
