"""What there is: the records that the stages hand on, and nothing that acts on them."""
