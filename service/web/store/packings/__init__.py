"""What lies in a container over HTTP: packings, single changes, moves, outs and checks."""
