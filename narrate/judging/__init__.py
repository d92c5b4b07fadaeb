"""Rules over columns: what holds, fails or cannot be told, how arguments weigh, and what holds them down."""
