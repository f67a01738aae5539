"""The week board: pure functions on plans and what a page shows of them."""
