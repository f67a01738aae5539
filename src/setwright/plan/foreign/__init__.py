"""Plans in layouts that are not ours: notes, CSV, workbooks; every line accounted for."""
