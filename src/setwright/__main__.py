"""`python -m setwright` runs the command line."""

from setwright.cli.main import main

if __name__ == "__main__":
    main()
