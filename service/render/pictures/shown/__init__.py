"""Photos as somebody chose to show them: cropped and turned, and as a browser gets them."""
