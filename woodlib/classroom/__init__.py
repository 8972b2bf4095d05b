"""For a class: lessons as pages, worksheets with own numbers for each student and their key, sheets for the teacher."""
