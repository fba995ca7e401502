"""What would be printed, as pictures for the screen; nothing of it is remembered as printed."""
