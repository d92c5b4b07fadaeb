"""Simulated digs whose truth is known, and how often claims about them are right."""
