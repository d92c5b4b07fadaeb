"""The things that the trade speaks of, as frozen values. This room reads nothing and computes nothing."""
