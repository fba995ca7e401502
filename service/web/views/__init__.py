"""What people see in a browser: small pages from templates, with no script."""
