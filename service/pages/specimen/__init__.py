"""The specimen of marks as pages."""
