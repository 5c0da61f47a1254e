"""The tables of sampling by attributes as published, cell by cell.

The code makes them from a pattern, so that here they are checked whole.
"""

# MIL-STD-105E (10 May 1989, public release), table I, general levels: lot from, to, I, II, III
LETTERS_BY_LOT = """
2 8 A A B
9 15 A B C
16 25 B C D
26 50 C D E
51 90 C E F
91 150 D F G
151 280 E G H
281 500 F H J
501 1200 G J K
1201 3200 H K L
3201 10000 J L M
10001 35000 K M N
35001 150000 L N P
150001 500000 M P Q
500001 9999999 N Q R
"""

# MIL-STD-105E, table II-A: the heads of these columns, from memory
COLUMNS = "0.065 0.10 0.15 0.25 0.40 0.65 1.0 1.5 2.5 4.0 6.5 10"

# MIL-STD-105E, table II-A, single sampling, normal inspection, limits 0.065 to 10: letter, sample, then accept/reject,
# "v" for an arrow down, "^" for one up. A at 10: the copies differ; an arrow up would point at nothing.
SINGLE_PLANS = """
A 2 v v v v v v v v v v 0/1 v
B 3 v v v v v v v v v 0/1 ^ v
C 5 v v v v v v v v 0/1 ^ v 1/2
D 8 v v v v v v v 0/1 ^ v 1/2 2/3
E 13 v v v v v v 0/1 ^ v 1/2 2/3 3/4
F 20 v v v v v 0/1 ^ v 1/2 2/3 3/4 5/6
G 32 v v v v 0/1 ^ v 1/2 2/3 3/4 5/6 7/8
H 50 v v v 0/1 ^ v 1/2 2/3 3/4 5/6 7/8 10/11
J 80 v v 0/1 ^ v 1/2 2/3 3/4 5/6 7/8 10/11 14/15
K 125 v 0/1 ^ v 1/2 2/3 3/4 5/6 7/8 10/11 14/15 21/22
L 200 0/1 ^ v 1/2 2/3 3/4 5/6 7/8 10/11 14/15 21/22 ^
M 315 ^ v 1/2 2/3 3/4 5/6 7/8 10/11 14/15 21/22 ^ ^
N 500 v 1/2 2/3 3/4 5/6 7/8 10/11 14/15 21/22 ^ ^ ^
P 800 1/2 2/3 3/4 5/6 7/8 10/11 14/15 21/22 ^ ^ ^ ^
Q 1250 2/3 3/4 5/6 7/8 10/11 14/15 21/22 ^ ^ ^ ^ ^
R 2000 3/4 5/6 7/8 10/11 14/15 21/22 ^ ^ ^ ^ ^ ^
"""


def rows(table):
    """Return a table's cells, row by row."""
    return [line.split() for line in table.strip().splitlines()]
