"""The HTTP edge: requests in, proven PDFs, findings and problems out."""
