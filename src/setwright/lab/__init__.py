"""Virtual lifters: a population that trains, to test the estimates and the coaching against."""
