"""From a bare Python 3.11 to a running service: libraries, environment, checks.

Takes the command line, gives an exit code. Standard library only, and nothing else of ours is
imported before the environment is ready; once it is, every start passes through in a blink.
What it says goes to standard error, so that a command's own output stays clean.
"""
