"""Workbooks that the tool makes: the blank one for entering makers, and the one with results.

Enters: criteria and brief, or an assessment. Leaves: the bytes of an .xlsx; writing them is not done here. User
text is always stored as text, so that no cell of the user's can become a formula or a link.
"""
