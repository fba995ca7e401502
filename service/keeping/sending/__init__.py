"""Sending the PDFs of a run to printers in the network, where somebody typed their address."""
