#include "cli/examples.h"

const struct example example_table[] = {
    {"size", "tyresum size \"205/55R16 91V\"", "What does the sidewall say?", true},
    {"size", "tyresum size - --format csv <sizes.txt", "A list of sizes, one a line.", false},
    {"size", "tyresum size - --from csv --column size <stock.csv",
     "A CSV file, with the columns of `size` added to every record.", false},
    {"compare", "tyresum compare \"P255/70R16 109S\" \"LT255/75R16 111/108Q\"",
     "One tyre beside another.", true},
    {"compare", "tyresum compare build.yaml --units us", "The options of a build file.", false},
    {"speedometer", "tyresum speedometer build.yaml",
     "What the instrument shows, and what to enter.", false},
    {"gearing", "tyresum gearing build.yaml", "What the drive becomes.", false},
    {"load", "tyresum load build.yaml --format json",
     "Axle loads and pressures, for a program to read.", false},
    {"clearance", "tyresum clearance build.yaml --units both",
     "Does it fit? In millimetres and inches.", false},
    {"sheet", "tyresum sheet build.yaml", "The whole job, to read.", false},
    {"sheet", "tyresum sheet build.yaml --format csv --output sheet.csv",
     "The whole job, for a spreadsheet.", true},
    {"shortlist", "tyresum shortlist build.yaml --best 5",
     "Which sizes would do? The file says within which limits, under search.", false},
    {"check", "tyresum check build.yaml", "What would be assumed, and what is missing.", false},
    {"check", "tyresum check --template --output new.yaml", "A build file to start from.", false},
    {"tables", "tyresum tables", "Which tables the sums rest on.", false},
    {"tables", "tyresum tables load_index --format csv", "One of them.", false},
};
const size_t example_count = sizeof example_table / sizeof example_table[0];
