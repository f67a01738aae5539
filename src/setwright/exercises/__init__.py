"""The catalogue of exercises, their profiles, and the kit they need."""
