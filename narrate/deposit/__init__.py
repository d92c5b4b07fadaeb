"""What machines and archives are given: claims, measures and packages of data."""
