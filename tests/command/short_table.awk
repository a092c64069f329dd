# A table for reading with ten rows of each block of figures, and how many more there are: its layout,
# which is the same for all rows. Their values are held by tests/second.
/^---/ { in_block = 1; rows = 0 }
/^$/ {
    if (in_block && rows > 11)
        printf "(%d more rows)\n", rows - 11
    in_block = 0
}
in_block && ++rows > 11 { next }
{ print }
