"""What sharing on a network needs: the names of this machine, a certificate of its own."""
