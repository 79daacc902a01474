# The office pack.

office-name = office pack
