"""Help: short pages about the work itself, each on one screen."""
