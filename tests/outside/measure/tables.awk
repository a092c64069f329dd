# A row of tables.csv for the table `name`: its rows first, then those of all checks (fields apart by
# \037), then what was found: "table column row id".
part == "" { rows++ }

part == "rows" {
    split($0, field, "\037")
    file_of[field[2]] = field[11]
}

part == "found" && $1 == name {
    if (!(($2, $3) in seen)) {
        seen[$2, $3] = 1
        if (!in_column[$2]++)
            column[++columns] = $2
    }
    if (!($3 in row_seen)) {
        row_seen[$3] = 1
        checked++
    }
    if (!($4 in id_seen)) {
        id_seen[$4] = 1
        checks++
        if (!by_file[file_of[$4]]++)
            file[++files] = file_of[$4]
    }
}

END {
    for (i = 1; i <= columns; i++)
        line = line (i > 1 ? " " : "") column[i] " (" in_column[column[i]] ")"
    for (i = 1; i <= files; i++)
        names = names (i > 1 ? " " : "") file[i] " (" by_file[file[i]] ")"
    print name "," rows "," checked + 0 "," line "," checks + 0 "," names
}
