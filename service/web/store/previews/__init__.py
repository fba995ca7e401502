"""Pictures of what is, was or would be printed: rasters of the real PDF, and nothing remembered."""
