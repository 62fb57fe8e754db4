#include "csv_text.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { NUMBER_LENGTH = 40 };

static bool is_blank(char c)
{
    return c == ' ' || c == '\t';
}

static bool ends_line(char c)
{
    return c == '\0' || c == '\n' || c == '\r';
}

/* Over one line end, if there is one; CRLF is one. */
static char *over_line_end(struct cg_csv *csv, char *at)
{
    if (*at == '\0')
        return at;
    csv->line++;
    return at + (at[0] == '\r' && at[1] == '\n' ? 2 : 1);
}

static char *line_end(char *at)
{
    while (!ends_line(*at))
        at++;
    return at;
}

/* The quote that closes the cell opened before `at`, or the text's end. */
static char *closing_quote(char *at)
{
    while (*at != '\0' && (at[0] != '"' || at[1] == '"'))
        at += at[0] == '"' ? 2 : 1;
    return at;
}

/* A quoted remark may run over several lines; the line of its end, or NULL if
 * `at` begins no remark. */
static char *remark_end(struct cg_csv *csv, char *at)
{
    if (at[0] == '#')
        return line_end(at);
    if (at[0] != '"' || at[1] != '#')
        return NULL;
    char *close = closing_quote(at + 1);
    if (*close == '\0')
        return NULL; /* left to the reader of rows, which complains */
    while (at < close)
        at = ends_line(*at) ? over_line_end(csv, at) : at + 1;
    return line_end(close);
}

/* Passes over remarks and lines of nothing but blanks and separators. */
static void skip_idle(struct cg_csv *csv)
{
    while (*csv->rest != '\0') {
        char *end = remark_end(csv, csv->rest);
        if (end == NULL) {
            end = csv->rest + strspn(csv->rest, " \t,;");
            if (!ends_line(*end))
                return;
        }
        csv->rest = over_line_end(csv, end);
    }
}

const char *cg_csv_begin(struct cg_csv *csv, char *text)
{
    static const char mark[] = "\xEF\xBB\xBF", separators[] = ",;\t";
    bool quoted = false;
    csv->rest = text;
    csv->line = 1;
    csv->separator = '\0';
    if (strncmp(csv->rest, mark, 3) == 0)
        csv->rest += 3;
    skip_idle(csv);
    if (*csv->rest == '\0')
        return "no header line, the first line must name the columns";
    for (const char *at = csv->rest; !ends_line(*at); at++) {
        if (*at == '"')
            quoted = !quoted;
        if (quoted || strchr(separators, *at) == NULL)
            continue;
        if (csv->separator != '\0' && csv->separator != *at)
            return "two separators in the header line, allowed: comma, "
                   "semicolon or tab, one of them throughout";
        csv->separator = *at;
    }
    if (csv->separator == '\0')
        return "no separator in the header line, allowed: comma, semicolon or "
               "tab";
    return NULL;
}

/* Over blanks that do not separate. */
static char *over_blanks(const struct cg_csv *csv, char *at)
{
    while (is_blank(*at) && *at != csv->separator)
        at++;
    return at;
}

/* Whether a cell ends here: at its line's end or at a separator. */
static bool ends_cell(const struct cg_csv *csv, char c)
{
    return ends_line(c) || c == csv->separator;
}

/* Reads a cell after its opening quote and moves it together; *end: its end
 * in place; returns where the cell is left. */
static char *read_quoted(struct cg_csv *csv, char *at, char **end,
                         const char **trouble)
{
    char *put = at;
    while (*at != '\0' && (at[0] != '"' || at[1] == '"')) {
        if (at[0] == '"') {
            at++;
        } else if (ends_line(at[0]) && !(at[0] == '\r' && at[1] == '\n')) {
            csv->line++;
        }
        *put++ = *at++;
    }
    *end = put;
    if (*at == '\0') {
        *trouble = "a quote is opened and never closed";
        return at;
    }
    at = over_blanks(csv, at + 1);
    if (!ends_cell(csv, *at))
        *trouble = "text after a closing quote, a quote inside a quoted cell "
                   "is written twice";
    return at;
}

static char *read_plain(const struct cg_csv *csv, char *at, char **end,
                        const char **trouble)
{
    char *begin = at;
    for (; !ends_cell(csv, *at); at++)
        if (*at == '"')
            *trouble = "a quote inside a cell, allowed: none, or the whole "
                       "cell in quotes";
    *end = at;
    while (*end > begin && is_blank((*end)[-1]))
        (*end)--;
    return at;
}

enum cg_csv_read cg_csv_next(struct cg_csv *csv, struct cg_csv_record *record)
{
    skip_idle(csv);
    if (*csv->rest == '\0')
        return CG_CSV_END;
    char *at = csv->rest, stop;
    *record = (struct cg_csv_record){.line = csv->line};
    do {
        char *end;
        if (record->cells == CG_CSV_CELLS) {
            record->trouble = "more than 256 cells in a line";
            break;
        }
        at = over_blanks(csv, at);
        bool quoted = *at == '"';
        record->cell[record->cells++] = quoted ? at + 1 : at;
        at = quoted ? read_quoted(csv, at + 1, &end, &record->trouble)
                    : read_plain(csv, at, &end, &record->trouble);
        if (record->trouble != NULL)
            break;
        stop = *at;
        /* The line's end must be seen before the cell's zero is put on it. */
        at = ends_line(stop) ? over_line_end(csv, at) : at + 1;
        *end = '\0';
    } while (!ends_line(stop));
    if (record->trouble != NULL)
        at = over_line_end(csv, line_end(at));
    csv->rest = at;
    return record->trouble != NULL ? CG_CSV_TROUBLE : CG_CSV_RECORD;
}

static const char *over_digits(const char *at)
{
    return at + strspn(at, "0123456789");
}

/* digits, sign, digits, exponent, with a digit before the exponent */
static bool well_formed(const char *cell)
{
    const char *at = cell + (*cell == '+' || *cell == '-');
    const char *begin = at;
    at = over_digits(at);
    bool sign = *at == '.' || *at == ',';
    at = over_digits(at + sign);
    if (at == begin + sign)
        return false;
    if (*at == 'e' || *at == 'E') {
        at += at[1] == '+' || at[1] == '-' ? 2 : 1;
        if (over_digits(at) == at)
            return false;
        at = over_digits(at);
    }
    return *at == '\0';
}

const char *cg_csv_number(const char *cell, char separator, double *value,
                          char *sign)
{
    const char *first = strpbrk(cell, ".,");
    char plain[NUMBER_LENGTH];
    if (first != NULL && strpbrk(first + 1, ".,") != NULL &&
        cell[strspn(cell, "+-0123456789.,")] == '\0')
        return "two decimal signs, allowed: one, and none between thousands";
    if (strlen(cell) >= sizeof plain || !well_formed(cell))
        return "not a number, allowed: digits with one decimal sign";
    if (separator == ',' && first != NULL && *first == ',')
        return "a decimal comma where commas separate the cells, allowed: a "
               "decimal point, or semicolons between cells";
    strcpy(plain, cell);
    if (first != NULL)
        plain[first - cell] = '.';
    double number = strtod(plain, NULL);
    if (!isfinite(number))
        return "too large to be a number";
    *value = number;
    *sign = first != NULL ? *first : '\0';
    return NULL;
}

void cg_csv_quote(const char *text, char *cell, size_t size)
{
    size_t used = 0;
    cell[used++] = '"';
    for (; *text != '\0' && used + 3 < size; text++) {
        if (*text == '"')
            cell[used++] = '"';
        cell[used++] = *text;
    }
    cell[used++] = '"';
    cell[used] = '\0';
}

const char *cg_csv_too_many(const struct cg_csv_record *record, size_t columns,
                            char separator)
{
    size_t cells = record->cells;
    if (cells == columns + 1 && record->cell[columns][0] == '\0')
        return "; nothing follows the last separator, it is one too many";
    return cells > columns && separator == ','
               ? "; decimal commas need semicolons between cells"
               : "";
}
