"""Photos matched to objects by what their files are called."""
