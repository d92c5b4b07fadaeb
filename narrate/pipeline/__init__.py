"""The steps of each command, from a project folder to what stands in `out/`: one module a command."""
