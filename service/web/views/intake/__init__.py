"""Pages of imports: sending files, saying what their headings mean, looking, taking in and back."""
