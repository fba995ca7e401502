"""Who asks, and what they may do: readers, the gate of every route, cookies, forms."""
