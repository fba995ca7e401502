"""What is done with the contents of a container; each change begins with the revision one saw."""
