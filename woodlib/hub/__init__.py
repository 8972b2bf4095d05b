"""A live class: a hub on one computer, where each student has the lessons in a folder of their own."""
