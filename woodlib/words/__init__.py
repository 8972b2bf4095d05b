"""What a person reads: numbers with unit and range, words, and the kinks that choose between them."""
