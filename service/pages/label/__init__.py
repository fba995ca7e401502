"""The parts of a label that is read from the aisle."""
