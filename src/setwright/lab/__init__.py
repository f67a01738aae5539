"""Virtual lifters: a population that trains, to test the estimates and the coaching against.

Nothing here is read by the estimate: the lifters follow other laws than it assumes
(docs/lab.md), and were fitted to published figures (published.py), never to its errors.
"""
