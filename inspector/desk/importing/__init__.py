"""The pages by which a list that the club kept before is looked through and taken."""
