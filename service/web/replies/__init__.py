"""What is answered: prints in the media type asked for, and problems."""
