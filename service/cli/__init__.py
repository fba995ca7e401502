"""The command line: parse, call, answer."""
