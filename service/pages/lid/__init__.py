"""The lid card: head, handling strip, grid of pictures or lists, foot."""
