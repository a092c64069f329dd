#include "size/designation_loose.h"

#include <stdarg.h>
#include <stdio.h>

#include "size/designation_internal.h"

/* Words of sidewalls and stock lists that no figure hangs on: how it is sealed, how its letters
 * look, what its tread is for. A blank stands for one or more. */
static const char *const passed_over[] = {
    "TL",  "TT",         "TUBELESS",  "TUBE LESS",  "TUBETYPE",  "TUBE TYPE",   "BSW",     "BLK",
    "BW",  "RWL",        "ROWL",      "OWL",        "OBL",       "RBL",         "WL",      "WSW",
    "WW",  "WHITE WALL", "WHITEWALL", "VSB",        "BLACKWALL", "BLACK WALL",  "FP",      "FR",
    "FSL", "MFS",        "RPB",       "RFT",        "RUNFLAT",   "RUN FLAT",    "A/T",     "AT",
    "H/T", "HT",         "M/T",       "MT",         "R/T",       "STUDDABLE",   "STUDDED", "RADIAL",
    "NEW", "TYRE",       "TIRE",      "ALL SEASON", "SUMMER",    "REGROOVABLE", "WINTER",
};

/* What has become of the text, and what was done to it. */
struct loose {
    char text[DESIGNATION_LENGTH_MAX + 8];
    size_t length;
    char *taken;
    size_t used;
    bool passed; /* over some words */
    bool added;  /* more than a mark between numbers */
};

static void tell(struct loose *loose, const char *format, ...)
    __attribute__((format(printf, 2, 3)));

static void tell(struct loose *loose, const char *format, ...)
{
    size_t room = TAKEN_SIZE - loose->used;
    if (loose->used > 0)
        loose->used += (size_t)snprintf(loose->taken + loose->used, room, "; ");
    room = TAKEN_SIZE > loose->used ? TAKEN_SIZE - loose->used : 0;
    va_list arguments;
    va_start(arguments, format);
    int length = vsnprintf(loose->taken + (room > 0 ? loose->used : 0), room, format, arguments);
    va_end(arguments);
    loose->used += length > 0 ? (size_t)length : 0;
    if (loose->used > TAKEN_SIZE - 1)
        loose->used = TAKEN_SIZE - 1;
}

static bool ends_word(char c)
{
    return c == '\0' || c == ' ' || c == ',' || c == ';' || c == ')';
}

/* Behind such a word, or NULL. */
static const char *word_end(const char *at, const char *word)
{
    for (; *word != '\0'; word++) {
        if (*word != *at)
            return NULL;
        at++;
        while (*word == ' ' && *at == ' ')
            at++;
    }
    return ends_word(*at) ? at : NULL;
}

/* DOT2219, DOT 2219, DOT 22/19, DOT: the week and year in which it was made. */
static const char *date_end(const char *at)
{
    if (strncmp(at, "DOT", 3) != 0)
        return NULL;
    const char *end = at + 3, *digits = end + strspn(end, " :");
    size_t length = strspn(digits, "0123456789/");
    if ((length >= 2 && length <= 5) && ends_word(digits[length]))
        end = digits + length;
    return ends_word(*end) ? end : NULL;
}

static const char *passed_over_end(const char *at)
{
    const char *end = date_end(at);
    for (size_t i = 0; end == NULL && i < sizeof passed_over / sizeof passed_over[0]; i++)
        end = word_end(at, passed_over[i]);
    return end;
}

/* Blanks stand for what is passed over, so that a fault behind it keeps its column. */
static void put_blanks(struct loose *loose, size_t count)
{
    memset(loose->text + loose->length, ' ', count);
    loose->length += count;
}

/* Takes out the words that tell nothing, wherever they stand between others, and commas and
 * brackets around them. */
static void pass_over(struct loose *loose, const char *text)
{
    char names[TAKEN_SIZE] = "";
    bool begins = true;
    for (const char *at = text; *at != '\0';) {
        const char *word = at + (*at == '(');
        const char *end = begins ? passed_over_end(word) : NULL;
        if (end != NULL && (word == at || *end == ')')) {
            if (strlen(names) + (size_t)(end - word) + 3 < sizeof names) {
                strcat(names, *names ? ", " : "");
                strncat(names, word, (size_t)(end - word));
            }
            end += word != at;
            end += strspn(end, " ,;");
            put_blanks(loose, (size_t)(end - at));
            at = end;
            continue;
        }
        begins = *at == ' ' || *at == ',' || *at == ';';
        loose->text[loose->length++] = *at++;
    }
    size_t ends = loose->length;
    while (ends > 0 && strchr(" ,;", loose->text[ends - 1]) != NULL)
        ends--;
    loose->text[loose->length] = '\0';
    const char *mark = strpbrk(loose->text + ends, ",;");
    if (mark != NULL && *names == '\0')
        strncat(names, mark, 1);
    memset(loose->text + ends, ' ', loose->length - ends);
    loose->passed = *names != '\0';
    if (loose->passed)
        tell(loose, "passed over: %s", names);
}

/* A number of the size, as written. */
struct number {
    const char *at;
    size_t length;
    int hundredths;
    bool whole, comma;
};

static bool is_times(char mark)
{
    return mark == 'X' || mark == '*';
}

/* A mark between two numbers: '/', '-', 'X', '*', or ' ' where only blanks stand; 0 for none. */
static char scan_mark(const char **at)
{
    const char *from = *at;
    *at += strspn(*at, " ");
    char mark = **at;
    if (mark != '/' && mark != '-' && !is_times(mark))
        return *at > from ? ' ' : '\0';
    ++*at;
    *at += strspn(*at, " ");
    return mark;
}

static bool scan_number(const char **at, struct number *out)
{
    *out = (struct number){.at = *at, .whole = true};
    size_t digits = strspn(*at, "0123456789");
    if (digits == 0 || digits > 4 || **at == '0')
        return false;
    for (size_t i = 0; i < digits; i++)
        out->hundredths = out->hundredths * 10 + (*at)[i] - '0';
    out->hundredths *= 100;
    *at += digits;
    size_t decimals = **at == '.' || **at == ',' ? strspn(*at + 1, "0123456789") : 0;
    if (decimals > 0 && decimals < 3) {
        out->comma = **at == ',';
        out->whole = false;
        out->hundredths += ((*at)[1] - '0') * 10 + (decimals > 1 ? (*at)[2] - '0' : 0);
        *at += decimals + 1;
    }
    out->length = (size_t)(*at - out->at);
    return true;
}

static bool is_between(const struct number *number, int low, int high)
{
    return number->hundredths >= 100 * low && number->hundredths <= 100 * high;
}

static bool is_width_mm(const struct number *number)
{
    return number->whole && is_between(number, 100, 455);
}

static bool is_aspect(const struct number *number)
{
    return number->whole && number->length == 2 && is_between(number, 20, 95);
}

static bool is_diameter_in(const struct number *number)
{
    return is_between(number, 25, 60);
}

/* Of a flotation size: narrower than it is high. */
static bool is_width_in(const struct number *number, const struct number *diameter)
{
    return is_between(number, 5, 25) && number->hundredths * 10 <= diameter->hundredths * 7;
}

static bool is_rim(const struct number *number)
{
    return is_between(number, 8, 30) && (number->whole || number->hundredths % 100 == 50);
}

static bool begins_construction(const char *at)
{
    at += strspn(at, " ");
    size_t letters = strspn(at, "ZRFDB");
    at += letters + strspn(at + letters, " ");
    return letters > 0 && letters < 4 && is_digit(*at);
}

/* "29.50" of "29,50". */
static void put_number(struct loose *loose, const struct number *number)
{
    for (size_t i = 0; i < number->length; i++)
        loose->text[loose->length++] = number->at[i] == ',' ? '.' : number->at[i];
    loose->text[loose->length] = '\0';
}

static void put_text(struct loose *loose, const char *text)
{
    size_t room = sizeof loose->text - 1 - loose->length, length = strlen(text);
    length = length < room ? length : room;
    memcpy(loose->text + loose->length, text, length);
    loose->length += length;
    loose->text[loose->length] = '\0';
}

/* The numbers of a size, as far as there are any, with the marks between them. */
struct parts {
    size_t prefix;
    struct number numbers[3];
    char marks[2];
    size_t count;
    const char *rest;
};

static bool scan_parts(const char *text, struct parts *out)
{
    const char *at = text + strspn(text, " ");
    *out = (struct parts){.count = 0};
    while (is_letter(*at))
        at++;
    out->prefix = (size_t)(at - text);
    at += strspn(at, " ");
    if (!scan_number(&at, &out->numbers[0]))
        return false;
    out->rest = at;
    for (out->count = 1; out->count < 3; out->count++) {
        char mark = scan_mark(&at);
        if (mark == '\0' || !scan_number(&at, &out->numbers[out->count]))
            return true;
        out->marks[out->count - 1] = mark;
        out->rest = at;
    }
    return true;
}

/* Two of a kind, or none: a single hyphen is the construction. */
static bool hyphens_separate(const struct parts *parts)
{
    return parts->count < 3 || (parts->marks[0] == '-') == (parts->marks[1] == '-');
}

static void tell_marks(struct loose *loose, const struct parts *parts, char right)
{
    for (size_t i = 0; i < parts->count; i++)
        if (parts->numbers[i].comma) {
            tell(loose, "a decimal point for the comma");
            break;
        }
    char mark = parts->marks[0];
    if (mark == right || (mark == 'X' && right == 'x'))
        return;
    if (mark == ' ')
        tell(loose, "%c added", right);
    else
        tell(loose, "%c for %c", right, mark);
}

/* 245/75/16, 265 70 17, 265-70-17, 33/12.50/17; 265 70R17, 31/10.50R15. */
static bool rewrite_three(struct loose *loose, const struct parts *parts)
{
    const struct number *first = &parts->numbers[0], *second = &parts->numbers[1];
    bool metric = is_width_mm(first) && is_aspect(second);
    bool flotation = is_diameter_in(first) && is_width_in(second, first);
    bool constructed = parts->count == 2 && begins_construction(parts->rest);
    bool alone = parts->count == 3 && is_rim(&parts->numbers[2]) &&
                 (metric || parts->numbers[2].hundredths + 600 < first->hundredths);
    char mark = parts->marks[0];
    if ((!metric && !flotation) || (!constructed && !alone) || !hyphens_separate(parts) ||
        (constructed && mark == '-') ||
        (metric && (is_times(mark) || (alone && is_times(parts->marks[1])))) ||
        (flotation && alone && is_times(mark) && parts->marks[1] == '-'))
        return false;
    put_number(loose, first);
    put_text(loose, metric ? "/" : "x");
    put_number(loose, second);
    tell_marks(loose, parts, metric ? '/' : 'x');
    if (alone) {
        put_text(loose, "R");
        put_number(loose, &parts->numbers[2]);
        tell(loose, "R added");
        loose->added = true;
    }
    put_text(loose, parts->rest);
    return true;
}

/* 7,50R16 and 750R16: a decimal point, and nothing else, is missing. */
static bool rewrite_point(struct loose *loose, const struct parts *parts)
{
    const struct number *first = &parts->numbers[0];
    bool construction = begins_construction(parts->rest) || *parts->rest == '-';
    bool hyphen = parts->count == 2 && parts->marks[0] == '-' && is_rim(&parts->numbers[1]);
    if (!hyphen && (parts->count != 1 || !construction))
        return false;
    char inches[16];
    bool point_lost = first->whole && first->hundredths >= 50000 && first->hundredths <= 140000 &&
                      first->hundredths % 500 == 0;
    if (point_lost)
        snprintf(inches, sizeof inches, "%d.%02d", first->hundredths / 10000,
                 first->hundredths / 100 % 100);
    if (!point_lost && !(first->comma && is_between(first, 3, 24)))
        return false;
    if (point_lost)
        put_text(loose, inches);
    else
        put_number(loose, first);
    tell(loose, "a decimal point%s", point_lost ? " added" : " for the comma");
    put_text(loose, first->at + first->length);
    return true;
}

/* 7.50/16, 195 14: radial or diagonal, and nothing tells which. */
static bool names_two(const struct parts *parts, struct designation_error *error)
{
    const struct number *width = &parts->numbers[0], *rim = &parts->numbers[1];
    bool inches = is_between(width, 3, 24), mm = width->whole && is_between(width, 125, 275);
    if (parts->count != 2 || parts->marks[0] == '-' || !is_rim(rim) || (!inches && !mm) ||
        (mm && rim->length == 2 && is_between(rim, 20, 95)) || begins_construction(parts->rest))
        return false;
    error->column = 1;
    error->length = (size_t)(parts->rest - width->at) + parts->prefix;
    snprintf(error->message, sizeof error->message,
             "this may be %.*sR%.*s or %.*s-%.*s; expected R or - before the rim diameter code",
             (int)width->length, width->at, (int)rim->length, rim->at, (int)width->length,
             width->at, (int)rim->length, rim->at);
    return true;
}

/* The size at the head of the text without the words that were passed over. */
static bool rewrite(struct loose *loose, struct designation_error *error)
{
    char text[sizeof loose->text];
    struct parts parts;
    memcpy(text, loose->text, loose->length + 1);
    if (!scan_parts(text, &parts))
        return false;
    loose->length = parts.prefix;
    loose->text[loose->length] = '\0';
    return rewrite_three(loose, &parts) || rewrite_point(loose, &parts) ||
           (names_two(&parts, error) && false);
}

/* Reads the text that the numbers make. Its fault stands where the mark stood in the text as it
 * was, or the first fault stays. */
static bool read_rewritten(struct loose *loose, struct designation *out,
                           struct designation_error *error)
{
    size_t before = loose->length;
    struct designation_error fault;
    if (!rewrite(loose, error))
        return false;
    if (designation_parse((struct span){loose->text, loose->length}, out, &fault)) {
        out->completed = loose->added;
        return true;
    }
    if (fault.column + before <= loose->length)
        return false;
    fault.column = fault.column + before - loose->length;
    if (fault.column != error->column) /* else the first one shows the text as it was */
        *error = fault;
    return false;
}

bool designation_read(struct span text, struct designation *out, struct designation_error *error,
                      char taken[TAKEN_SIZE])
{
    taken[0] = '\0';
    if (designation_parse(text, out, error))
        return true;
    struct designation_error ignored;
    struct scanner scanner = {.error = &ignored, .source = text};
    struct loose loose = {.taken = taken};
    if (!scanner_fold(&scanner))
        return false;
    pass_over(&loose, scanner.text);
    if (loose.passed && designation_parse((struct span){loose.text, loose.length}, out, error))
        return true;
    if (read_rewritten(&loose, out, error))
        return true;
    taken[0] = '\0';
    return false;
}
