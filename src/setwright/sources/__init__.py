"""The findings every rule stands on."""
