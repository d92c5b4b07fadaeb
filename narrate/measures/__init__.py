"""What can be worked out from counts. Pure functions over whole columns; no records are read here."""
