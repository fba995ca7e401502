"""Pages of people: signing in and out, who may do what, tokens, telephones, sharing."""
