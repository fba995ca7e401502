"""One file a step, each for itself: it never looks at the tables as they are today."""
