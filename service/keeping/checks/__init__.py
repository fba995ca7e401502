"""What is noticed in a store when somebody looks at it."""
