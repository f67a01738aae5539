"""What is handed over: printed week, pictures, explanation."""
