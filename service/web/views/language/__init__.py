"""In which language a page is read: chosen for each request, spoken while it is answered."""
