# The seven columns of the stream benchmark, as one would write them in awk: the rules of UN R30
# for radial metric sizes, circumference 3.05 times the diameter.
{
    split($1, part, /[\/R]/)
    width = part[1] + 0
    if (width == 0) {
        gsub(/[A-Z]/, "", part[1])
        width = part[1] + 0
    }
    height = int((width * part[2] + 50) / 100)
    diameter = int(part[3] * 25.4 + 0.5) + 2 * height
    circumference = 3.05 * diameter
    printf "%s,%d,%d,%d,%.1f,%.1f,%.1f\n", $0, width, height, diameter, circumference, \
        1609344 / circumference, 1000000 / circumference
}
