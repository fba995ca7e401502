"""Around an import: the mapping by which a museum's own table is read, and taking it back."""
