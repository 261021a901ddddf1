"""The place of the people: who they are, what each may judge, who is at the desk."""
