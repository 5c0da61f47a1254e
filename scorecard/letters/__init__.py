"""Messages to makers: what to ask each, in the user's own wording, who was asked, and who is due a reminder."""
