/* libFuzzer entry: any bytes are read as a quantity of every kind. What is read is finite, is what
 * the C library reads, and survives being written and read again; what is not read is told by a
 * whole sentence with a place within the text. */
#include "fuzz.h"

#include <float.h>
#include <math.h>

#include "designation_property.h"
#include "output/number.h"
#include "size/quantity_text.h"

enum { DIGITS_MAX = 15, WRITTEN_MAX = 80, WORDS_MIN = 4 };

/* As many decimals as leave fifteen digits in all: the most that is read. */
static int decimals_for(double value)
{
    int whole = 1;
    /* Binary noise below a power of ten would be printed as that power. */
    for (double rest = fabs(value) * (1 + 4 * DBL_EPSILON); rest >= 10 && whole < DIGITS_MAX;
         rest /= 10)
        whole++;
    return DIGITS_MAX - whole;
}

/* The units' conversions round, at most a few times. */
static bool is_same(double a, double b)
{
    return fabs(a - b) <= 8 * DBL_EPSILON * fmax(fabs(a), fabs(b));
}

static const char *written_again(const struct quantity *read, enum unit_kind kind)
{
    char written[WRITTEN_MAX];
    double value = kind == KIND_BARE ? read->si : unit_from_si(read->unit, read->si);
    snprintf(written, sizeof written, "%.*f %s", decimals_for(value), value,
             unit_table[read->unit].name);
    struct quantity again;
    struct quantity_error error;
    if (!quantity_parse(span_of(written), kind, &again, &error))
        return fabs(value) < 999999999999999 ? "what was written is not read again" : NULL;
    if (again.unit != read->unit)
        return "what was written is read in another unit";
    return is_same(again.si, read->si) ? NULL : "what was written is read as another value";
}

static const char *property_of_quantity(const struct quantity *read, enum unit_kind kind)
{
    if (!isfinite(read->si))
        return "the value is not finite";
    if (read->si == 0 && signbit(read->si))
        return "the value is a negative zero";
    if (read->unit < 0 || read->unit >= UNIT_COUNT || unit_table[read->unit].kind != kind)
        return "the unit is not of the kind";
    return written_again(read, kind);
}

static const char *property_of_message(const char *message, size_t room)
{
    if (memchr(message, '\0', room) == NULL)
        return "the message does not end";
    size_t length = strlen(message), blanks = 0;
    if (length >= room - 1)
        return "the message was cut";
    for (size_t i = 0; i < length; i++) {
        blanks += message[i] == ' ';
        if ((unsigned char)message[i] < ' ' || message[i] == '\x7F')
            return "the message holds a control character";
    }
    if (blanks + 1 < WORDS_MIN)
        return "the message is no whole sentence";
    if (strstr(message, "expected") == NULL && strstr(message, "write ") == NULL &&
        strstr(message, "must be") == NULL)
        return "the message does not say what was expected";
    return NULL;
}

static const char *property_of_fault(const char *text, size_t size,
                                     const struct quantity_error *error)
{
    size_t characters = property_characters((const unsigned char *)text, size);
    if (error->column < 1 || error->column > characters + 1)
        return "the error's column lies outside the text";
    if (error->length < 1 || error->column + error->length > characters + 2)
        return "the error's length reaches beyond the text";
    return property_of_message(error->message, sizeof error->message);
}

/* decimal_read against strtod, which is correctly rounded too. */
static const char *property_of_decimal(const char *text, size_t size)
{
    double value, expected;
    char copy[DIGITS_MAX + 4], fixed[NUMBER_SIZE];
    size_t read = decimal_read((struct span){text, size}, &value);
    if (read == 0)
        return NULL;
    if (read > size || read >= sizeof copy)
        return "more is read than there is";
    memcpy(copy, text, read);
    copy[read] = '\0';
    expected = strtod(copy, NULL);
    if (value != expected || (value == 0 && signbit(value)))
        return "the number is not what strtod reads";
    size_t length = number_fixed(value, 3, '.', fixed);
    if (length != strlen(fixed) ||
        fabs(strtod(fixed, NULL) - value) > 0.0005 * (1 + 1e-6) + 2 * DBL_EPSILON * fabs(value))
        return "three decimals are not the number rounded";
    return NULL;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    char *text = fuzz_copy(data, size);
    const char *broken = property_of_decimal(text, size);
    for (int kind = 0; kind < KIND_COUNT && broken == NULL; kind++) {
        struct quantity read = {.unit = UNIT_COUNT};
        struct quantity_error error;
        memset(&error, 'x', sizeof error);
        if (quantity_parse((struct span){text, size}, (enum unit_kind)kind, &read, &error))
            broken = property_of_quantity(&read, (enum unit_kind)kind);
        else
            broken = property_of_fault(text, size, &error);
    }
    if (broken != NULL)
        fuzz_broken(broken, text, size);
    free(text);
    return 0;
}
