# Why a figure of the program is not recomputed, for the list under each build.
BEGIN {
}
