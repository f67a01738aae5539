"""The page of the person in the gym: pure code behind it."""
