"""What was done, by whom and when, and how things were."""
