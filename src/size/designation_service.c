/* Service descriptions: load index, single or single/dual, and speed symbol (UN R30 2.28, 2.29). */
#include "size/designation_internal.h"

#define SPEED_SYMBOL_EXPECTED "a speed symbol: A1 to A8, B to H, J to N, P to W or Y"

static bool scan_speed_symbol(struct scanner *scanner, struct service_description *service)
{
    skip_blanks(scanner);
    char letter = *scanner->at;
    if (is_speed_symbol_letter(letter)) {
        service->speed_symbol[0] = letter;
        scanner->at++;
        return true;
    }
    if (letter != 'A')
        return fault_expected(scanner, SPEED_SYMBOL_EXPECTED);
    scanner->at++;
    if (*scanner->at < '1' || *scanner->at > '8')
        return fault_expected(scanner, "a digit 1 to 8 behind the speed symbol's A");
    service->speed_symbol[0] = 'A';
    service->speed_symbol[1] = *scanner->at++;
    return true;
}

static bool scan_load_index(struct scanner *scanner, int *load_index)
{
    skip_blanks(scanner);
    const char *from = scanner->at;
    int count = scan_digits(scanner, load_index);
    if (count == 0)
        return fault_expected(scanner, "a load index from 0 to 200");
    if (count > 1 && *from == '0')
        return fault_between(scanner, from, scanner->at,
                             "a load index begins with 0; expected 0 to 200 without leading zeros");
    if (*load_index > LOAD_INDEX_MAX)
        return fault_between(scanner, from, scanner->at,
                             "a load index above %d does not exist; expected 0 to %d",
                             LOAD_INDEX_MAX, LOAD_INDEX_MAX);
    return true;
}

static bool scan_dual(struct scanner *scanner, struct service_description *service)
{
    skip_blanks(scanner);
    const char *from = scanner->at;
    if (!scan_load_index(scanner, &service->load_index_dual))
        return false;
    if (dual_goes_with(service->load_index_dual, service->load_index))
        return true;
    if (service->load_index_dual > service->load_index)
        return fault_between(scanner, from, scanner->at,
                             "the dual load index %d is above the single one; expected at most %d",
                             service->load_index_dual, service->load_index);
    return fault_between(scanner, from, scanner->at,
                         "the dual load index %d is far below the single one; expected %d to %d",
                         service->load_index_dual, service->load_index - DUAL_BELOW_MAX,
                         service->load_index);
}

static bool scan_description(struct scanner *scanner, struct service_description *service)
{
    if (!scan_load_index(scanner, &service->load_index))
        return false;
    skip_blanks(scanner);
    if (*scanner->at == '/') {
        scanner->at++;
        if (!scan_dual(scanner, service))
            return false;
    }
    return scan_speed_symbol(scanner, service);
}

static struct service_description *next_service(struct scanner *scanner)
{
    struct designation *out = scanner->out;
    if (out->service.speed_symbol[0] == '\0')
        return &out->service;
    return out->second_service.speed_symbol[0] == '\0' ? &out->second_service : NULL;
}

static bool third_fault(struct scanner *scanner)
{
    return fault_between(scanner, scanner->at, scanner->at + 1,
                         "a third service description stands here; expected two at most");
}

bool scan_service(struct scanner *scanner)
{
    struct service_description *service = next_service(scanner);
    if (service == NULL)
        return third_fault(scanner);
    if (service == &scanner->out->service)
        scanner->service_at = scanner->at;
    return scan_description(scanner, service);
}

/* Around the first description, parentheses say "above the speed of the symbol" (UN R30 2.29.3,
 * from memory), which is said of V, W and Y only; around a second one they say nothing. */
static bool check_above(struct scanner *scanner, const char *from,
                        const struct service_description *service)
{
    char symbol = service->speed_symbol[0];
    if ((symbol != 'V' && symbol != 'W' && symbol != 'Y') ||
        service->load_index_dual != LOAD_INDEX_NONE)
        return fault_between(
            scanner, from, scanner->at,
            "parentheses around the only service description mean a speed above its "
            "symbol; expected one load index with V, W or Y in them");
    return true;
}

bool scan_service_in_parentheses(struct scanner *scanner)
{
    struct service_description *service = next_service(scanner);
    if (service == NULL)
        return third_fault(scanner);
    bool first = service == &scanner->out->service;
    const char *from = scanner->at++;
    if (first)
        scanner->service_at = from;
    skip_blanks(scanner);
    bool bare = first && is_letter(*scanner->at);
    if (!(bare ? scan_speed_symbol(scanner, service) : scan_description(scanner, service)))
        return false;
    skip_blanks(scanner);
    if (*scanner->at != ')')
        return fault_expected(scanner, "')' behind the service description");
    scanner->at++;
    service->speed_above = first;
    return !first || check_above(scanner, from, service);
}
