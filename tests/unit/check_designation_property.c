/* Every prefix of a designation and every change of one character either reads as a tyre whose
 * canonical spelling is the same tyre, or is a fault within the text that says what was expected.
 */
#include <check.h>
#include <string.h>

#include "../fuzz/designation_property.h"
#include "designation_cases.h"
#include "support.h"

const char *const DESIGNATION_SAMPLES[] = {
    "205/55R16 91V",
    "205/55ZR16",
    "225/45R17 94Y XL",
    "225/40ZR18 (92Y) XL",
    "225/40ZR18 (Y)",
    "255/35ZRF19 (96Y) EXTRA LOAD",
    "255/35RF19 96Y REINFORCED",
    "205/55R16 91V SL",
    "P265/70R17 113S",
    "P195/75B14 92S",
    "LT245/75R16 120/116R LR E 10PR",
    "LT235/75R15 LOAD RANGE C",
    "LT245/75R16/E",
    "T125/70D16 96M",
    "HL245/40R20 102Y",
    "235/65R16C 115/113R",
    "225/75R16CP 118R",
    "315/70R22.5 154/150L",
    "315/80R22.5 156/150L (154/150M) LR L",
    "215/75R17.5 135/133J 16PR",
    "31x10.50R15LT 109R",
    "35x12.50R20LT 121Q LR E",
    "31x10.50-15LT",
    "31\xC3\x97"
    "10.50\xE2\x80\x93"
    "15 LT",
    "7.50R16LT 112/107N",
    "6.50-16 6PR",
    "11R22.5 146/143L LR H",
    "12-16.5NHS 10-ply",
    "10R15LT C",
    "165R13 82T",
    "185R14C 102/100R 8PR",
    "T125R15 68M",
    "220/55R390 88W",
    "245/700R470 116H",
    "ST225/75R15D 113/108M",
    "400/60-15.5 145A8",
    "8R19\xC2\xBD 124/122L",
    "lt 245 / 75 r16 120/116 r",
    "205/55r1691vll",
    "205/55R16 91H M+S 3PMSF",
    "LT265/75R16 123/120Q LR E POR M+S",
    "335/80R20 147K MPT",
    "12R22.5 152/148L LR H ML",
    NULL,
};

enum { ROOM = 256 };

static void must_hold(const char *text, size_t size)
{
    const char *broken = property_broken(text, size);
    ck_assert_msg(broken == NULL, "%s: \"%.*s\"", broken, (int)size, text);
}

START_TEST(samples_are_read)
{
    for (size_t i = 0; DESIGNATION_SAMPLES[i] != NULL; i++) {
        struct designation out;
        struct designation_error error;
        bool read = designation_parse(span_of(DESIGNATION_SAMPLES[i]), &out, &error);
        ck_assert_msg(read, "%s: %s", DESIGNATION_SAMPLES[i], error.message);
        must_hold(DESIGNATION_SAMPLES[i], strlen(DESIGNATION_SAMPLES[i]));
    }
}
END_TEST

START_TEST(prefixes)
{
    for (size_t i = 0; DESIGNATION_SAMPLES[i] != NULL; i++)
        for (size_t size = 0; size <= strlen(DESIGNATION_SAMPLES[i]); size++)
            must_hold(DESIGNATION_SAMPLES[i], size);
}
END_TEST

/* `removed` bytes at `position` give way to `inserted`. */
static void must_hold_changed(const char *sample, size_t position, size_t removed,
                              const char *inserted, size_t inserted_size)
{
    char text[ROOM];
    size_t rest = strlen(sample) - position - removed;
    memcpy(text, sample, position);
    memcpy(text + position, inserted, inserted_size);
    memcpy(text + position + inserted_size, sample + position + removed, rest);
    must_hold(text, position + inserted_size + rest);
}

static size_t sample_count(void)
{
    size_t count = 0;
    while (DESIGNATION_SAMPLES[count] != NULL)
        count++;
    return count;
}

/* In the short run one sample in ten, other ones for each change, so that all of them are met. */
static void change_everywhere(int change, const char *inserted, size_t inserted_size)
{
    size_t step = 10 / (size_t)rounds(10);
    for (size_t i = (size_t)change % step; i < sample_count(); i += step) {
        const char *sample = DESIGNATION_SAMPLES[i];
        for (size_t position = 0; position <= strlen(sample); position++) {
            must_hold_changed(sample, position, 0, inserted, inserted_size);
            if (position < strlen(sample))
                must_hold_changed(sample, position, 1, inserted, inserted_size);
        }
    }
}

enum { BYTES_A_TEST = 32 };

START_TEST(every_byte_everywhere)
{
    for (int i = 0; i < BYTES_A_TEST; i++) {
        char byte = (char)(unsigned char)(_i * BYTES_A_TEST + i);
        change_everywhere(_i * BYTES_A_TEST + i, &byte, 1);
    }
}
END_TEST

START_TEST(removals_and_characters_beyond_ascii)
{
    static const char *const INSERTED[] = {
        "",
        "\xC3\x97",
        "\xE2\x80\x93",
        "\xC2\xA0",
        "\xC2\xBD",
        "\xC3\xA9",
        "\xF0\x9F\x98\x80",
        "\xE2\x80",
        "\xC0\xAF",
        "  ",
        "LR",
        "PR",
    };
    for (size_t i = 0; i < sizeof INSERTED / sizeof INSERTED[0]; i++)
        change_everywhere((int)i, INSERTED[i], strlen(INSERTED[i]));
}
END_TEST

START_TEST(neighbours_swapped)
{
    for (size_t i = 0; DESIGNATION_SAMPLES[i] != NULL; i++) {
        const char *sample = DESIGNATION_SAMPLES[i];
        for (size_t position = 0; position + 1 < strlen(sample); position++) {
            char pair[2] = {sample[position + 1], sample[position]};
            must_hold_changed(sample, position, 2, pair, 2);
        }
    }
}
END_TEST

TCase *designation_property_case(void)
{
    TCase *property = tcase_create("prefixes and changes");
    tcase_set_tags(property, "text");
    tcase_add_test(property, samples_are_read);
    tcase_add_test(property, prefixes);
    tcase_add_loop_test(property, every_byte_everywhere, 0, 256 / BYTES_A_TEST);
    tcase_add_test(property, removals_and_characters_beyond_ascii);
    tcase_add_test(property, neighbours_swapped);
    return property;
}
