/* tyresum(1). */

#include "cli/examples.h"
#include "docgen/docgen.h"

static void put_command(struct outbuf *out, const struct command *command)
{
    put_all(out, ".It Cm ", command->name, " Ar ", NULL);
    put_roff(out, command->arguments);
    put_all(out, "\n", NULL);
    put_roff(out, command->purpose);
    put_all(out, ".\n", NULL);
}

static void put_commands(struct outbuf *out)
{
    put_all(out, ".Sh COMMANDS\n.Bl -tag -width speedometer\n", NULL);
    for (size_t i = 0; i < command_count; i++)
        put_command(out, &command_table[i]);
    put_all(
        out,
        ".El\n.Pp\nA\n.Ar FILE\nis a build file as in\n.Xr tyresum-build 5 ,\nin YAML or JSON;\n"
        ".Sq -\nis standard input.\nAn argument is a file where one has that name,\nor where it "
        "ends "
        "in .yaml, .yml or .json;\notherwise it is a designation,\nand the first of several is the "
        "fitted tyre.\nFiles and designations are not mixed.\n",
        "With several files, or with\n.Fl -each ,\na first column\n.Sq case\nsays which row is "
        "of which;\nwhat is wrong in one is told, and the others are computed.\n.Pp\n",
        "The verdict of a build is the worst finding of all its parts, as in\n.Cm sheet ;\n"
        "that of designations alone is of the tyre and the speedometer.\n",
        NULL);
}

static void put_set(struct outbuf *out)
{
    put_all(out,
            ".Sh VALUES FROM THE COMMAND LINE\n.Fl -set Ar PATH Ns = Ns Ar VALUE\n"
            "puts a value into the build before it is read,\nas if it stood in the file;\n"
            "it may be given as often as wanted, for each place once.\nA path is the names of keys "
            "with dots "
            "between them,\nsuch as suspension.front.lift,\nand may be cut to any ending:\nof the "
            "places "
            "that end so the shortest is meant,\nand two as short are an error that names both.\n"
            "An option stands by its letter in the file's order, A to Z, AA and so on,\nan item of "
            "a list by "
            "its number, either by its name;\na name with blanks or dots stands in quotes, in "
            "which it is "
            "nothing else.\n.Pp\n",
            ".Fl -each Ar PATH Ns = Ns Ar V1,V2,...\ncomputes once with each value;\ncommas within "
            "brackets "
            "and quotes part nothing.\nSeveral of them give every combination.\n.Pp\n"
            "A list of readings may come from a csv,\n.Fl -set No readings=@road.csv ,\nwhose "
            "heading has "
            "the columns shown and true,\nwith the unit behind the name or behind each value.\n",
            NULL);
}

/* Which commands take an option, said only where not all do. */
static void put_takers(struct outbuf *out, const struct option_row *row)
{
    const char *before = "\nTaken by\n";
    if ((row->commands & CMD_ANY) == CMD_ANY)
        return;
    for (size_t i = 0; i < command_count; i++) {
        if (!(command_table[i].bit & row->commands))
            continue;
        put_all(out, before, ".Cm ", command_table[i].name, NULL);
        before = " ,\n";
    }
    put_all(out, " .", NULL);
}

static void put_options(struct outbuf *out)
{
    put_all(out, ".Sh OPTIONS\nOptions stand anywhere;\n.Fl -\nends them.\n", NULL);
    put_all(out, "A value follows behind a blank or an equals sign.\n.Bl -tag -width Ds\n", NULL);
    for (size_t i = 0; i < option_count; i++) {
        const struct option_row *row = &option_table[i];
        put_all(out, ".It Fl -", row->name, NULL);
        if (row->argument != NULL)
            put_all(out, " Ar ", row->argument, NULL);
        put_all(out, "\n", NULL);
        put_roff(out, row->doc);
        put_all(out, ".", NULL);
        put_takers(out, row);
        put_all(out, "\n", NULL);
    }
    put_all(out, ".El\n", NULL);
}

static void put_columns(struct arena *arena, struct outbuf *out)
{
    put_all(out,
            ".Sh COLUMNS\nNames for csv, json and\n.Fl -columns .\n"
            "A name that ends in a metric unit has its twin in a us unit, and\n.Fl -units Ar both\n"
            "gives the metric ones first.\nA command with the columns of another is named with "
            "it.\n.Bl -tag -width Ds\n",
            NULL);
    for (size_t i = 0; i < command_count; i++) {
        const struct command *command = &command_table[i];
        if (*command->column_count == 0 ||
            (i > 0 && command->columns == command_table[i - 1].columns))
            continue;
        put_all(out, ".It Cm ", command->name, NULL);
        for (size_t j = i + 1; j < command_count && command_table[j].columns == command->columns;
             j++)
            put_all(out, " , ", command_table[j].name, NULL);
        put_all(out, "\n", column_names(arena, command, ",\n"), "\n", NULL);
    }
    put_all(out, ".El\n.Pp\n", NULL);
    put_all(out,
            "In csv an unknown value is an empty field, in json it is null;\n"
            "what each column and quantity means lists\n.Ql \"tyresum tables columns\"\nand\n"
            ".Ql \"tyresum tables quantities\" .\n"
            "json numbers carry ten significant digits.\nThe json of these commands is described "
            "by the JSON Schema\n"
            ".Pa tyresum-rows.schema.json .\n",
            NULL);
}

/* How `at` is made, in the order of reading/place_text.c. */
static void put_places(struct outbuf *out)
{
    static const struct {
        const char *key, *text;
    } places[] = {
        {"tyre", "nominal, largest, smallest, new, as worn now, worn to 1.6 mm"},
        {"posture", "ride height, bump, droop, lock"},
        {"axle_ratio", "axle ratio 4.10"},
        {"gear, range", "gear 3 high, gear 1 low 2.67, lowest gear high, reverse low; gear 2 to 3"},
        {"engine_speed_rpm", "2000 rpm"},
        {"road_speed_kmh, speed_as", "100 km/h, shown 100 km/h, true 60 mph, posted 30 mph"},
        {"grade_percent", "20 % grade"},
        {"setting", "as set now, as entered"},
        {"pressure, pressure_kPa",
         "placard, recommended, maximum, road, off road, without air; 240 kPa"},
        {"chains", "snow chains"},
        {"assumption, reading, timed_reading", "assumption 2, reading 3, timed reading 1"},
        {"name", "an item's, a rule's or a setting's name"},
        {"estimate", "estimate, standard error, 95 % from, 95 % to"},
    };
    put_all(out,
            ".Sh PLACES\nThe column\n.Cm at\nsays what a figure is taken at:\nplaces joined by a "
            "comma and a blank, in this order, those that it has.\nThe object\n.Cm place\nin json "
            "has them by the names below.\n.Bl -tag -width Ds\n",
            NULL);
    for (size_t i = 0; i < sizeof places / sizeof places[0]; i++) {
        put_all(out, ".It Cm ", places[i].key, "\n", NULL);
        put_roff(out, places[i].text);
        put_all(out, "\n", NULL);
    }
    put_all(
        out,
        ".El\n.Pp\nNo place is a computed value:\nthe places of a quantity are the same for every "
        "option,\nbut for the steps of a tyre's own pressure table\n.Pq Cm tyre_capacity ;\n"
        "where an option has no such figure,\nthe value is empty and the basis is\n"
        ".Ql \"of other options alone\" .\nThe columns part, option, state, axle, quantity, at\n"
        "and unit together are a row's key.\nIn SQL,\n.Cm limit\nis a word of the language: "
        "write\n.Ql \\(dqlimit\\(dq .\n",
        NULL);
}

/* On a macro line a double quote would be taken for mdoc's own. */
static void put_line(struct outbuf *out, const char *line)
{
    put_all(out, ".Dl ", NULL);
    for (; *line != '\0'; line++)
        if (*line == '"')
            outbuf_text(out, "\\(dq");
        else
            outbuf_char(out, *line);
}

static void put_examples(struct outbuf *out)
{
    put_all(out, ".Sh EXAMPLES\n", NULL);
    for (size_t i = 0; i < example_count; i++) {
        put_roff(out, example_table[i].purpose);
        put_all(out, "\n.Pp\n", NULL);
        put_line(out, example_table[i].line);
        put_all(out, i + 1 < example_count ? "\n.Pp\n" : "\n", NULL);
    }
}

static void put_environment(struct outbuf *out)
{
    put_all(out,
            ".Sh ENVIRONMENT\n.Bl -tag -width TYRESUM_FORMAT\n"
            ".It Ev TYRESUM_UNITS\nDefault of\n.Fl -units .\n"
            ".It Ev TYRESUM_FORMAT\nDefault of\n.Fl -format .\n"
            ".It Ev NO_COLOR\nNo colour, unless\n.Fl -color\nsays otherwise.\n.El\n.Pp\n"
            "Nothing else, no locale and no file, changes a result.\n",
            NULL);
}

static void put_status(struct outbuf *out)
{
    put_all(out,
            ".Sh EXIT STATUS\n.Bl -tag -width Ds\n"
            ".It 0\nEverything was computed.\n"
            ".It 1\nComputed, but a line of a stream could not be read, and its row says why;\nor "
            "a record of a stock list: standard error says which;\nor one of several builds is "
            "wrong.\n"
            ".It 2\nThe arguments or the input file are wrong; nothing is on standard output.\nSo "
            "is an\n"
            ".Fl -output\nthat would replace what is read,\nor a file by a template.\n"
            ".It 3\nWith\n.Fl -strict ,\na finding of an option that is shown is\n.Ql fail :\n"
            "it is no go.\nWithout options, a finding of the fitted tyre.\n"
            ".It 4\nThe output could not be written.\n.El\n.Pp\n"
            "Where several apply: 4, then 2, then 3, then 1.\n",
            NULL);
}

void write_manual(struct arena *arena, struct outbuf *out)
{
    put_manual_head(out, "tyresum", "1", "the sums of a tyre change");
    put_all(out,
            ".Sh SYNOPSIS\n.Nm\n.Ar command\n.Op Ar argument ...\n.Op Ar options\n"
            ".Sh DESCRIPTION\n.Nm\n"
            "reads size designations, or a build file that describes a vehicle,\n"
            "its tyres and what has been bolted on,\nand computes what a change of tyre does:\n"
            "size, speedometer, gearing, load and pressure, clearance.\n"
            "Every result names its basis, and what is not known is said to be unknown.\n",
            NULL);
    put_commands(out);
    put_options(out);
    put_set(out);
    put_columns(arena, out);
    put_places(out);
    put_environment(out);
    put_all(out,
            ".Sh FILES\nIn the package's data folder,\n.Pa share/tyresum\nwhere it is installed:\n"
            ".Bl -tag -width Ds\n"
            ".It Pa tyresum-build.schema.json\nJSON Schema of the build file, for editors.\n"
            ".It Pa tyresum-rows.schema.json\nJSON Schema of what json output holds.\n.El\n",
            NULL);
    put_status(out);
    put_examples(out);
    put_all(out,
            ".Sh DIAGNOSTICS\nOn standard error, all faults of a file in one go,\neach with its "
            "line and a mark under the place:\n.Pp\n"
            ".D1 Ar FILE : Ns Ar LINE : Ns Ar COLUMN : No error: what is wrong; what was expected\n"
            ".Sh SEE ALSO\n.Xr tyresum-build 5\n"
            ".Sh CAVEATS\nFor planning only.\nThe placard, the tyre maker's data book, the wheel's "
            "own rating,\nlocal codes and a licensed engineer's approval decide.\n"
            "Weigh the vehicle as loaded.\n",
            NULL);
}
