"""Many woods, climates, widths and ways at once, each with sampled boards and houses: where does a panel stop being sensible?"""
