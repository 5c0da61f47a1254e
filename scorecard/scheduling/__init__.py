"""The schedule, pure: from the day on which the pieces are needed back to the day on which they must be ordered.

Enters: days per step, calendars as sets of days, orders under way. Leaves: one plan per maker and way, each date with
its working. No date is a promise: makers, carriers and customs keep none of them for certain.
"""
