/* One value of a config: what it is, whether it fits, and into the case. */
#include "config_parts.h"

#include <math.h>
#include <string.h>

#include "nearest.h"
#include "scope.h"
#include "trade_word.h"

enum { CHOICES = 16 };

struct cg_value cg_value_of(const config_setting_t *setting)
{
    struct cg_value value = {.kind = CG_VALUE_NUMBER, .number = NAN,
                             .what = "a number"};
    switch (config_setting_type(setting)) {
    case CONFIG_TYPE_INT:
        value.number = config_setting_get_int(setting);
        break;
    case CONFIG_TYPE_INT64:
        value.number = (double)config_setting_get_int64(setting);
        break;
    case CONFIG_TYPE_FLOAT:
        value.number = config_setting_get_float(setting);
        break;
    case CONFIG_TYPE_STRING:
        value.kind = CG_VALUE_TEXT;
        value.text = config_setting_get_string(setting);
        value.what = "text";
        break;
    case CONFIG_TYPE_BOOL:
        value.kind = CG_VALUE_TRUTH;
        value.truth = config_setting_get_bool(setting) != 0;
        value.what = "true or false";
        break;
    case CONFIG_TYPE_GROUP:
        value.kind = CG_VALUE_OTHER;
        value.what = "a group { }";
        break;
    case CONFIG_TYPE_ARRAY:
        value.kind = CG_VALUE_OTHER;
        value.what = "an array [ ]";
        value.list = setting;
        break;
    default:
        value.kind = CG_VALUE_OTHER;
        value.what = "a list ( )";
        value.list = setting;
        break;
    }
    return value;
}

struct cg_origin *cg_origin_of(struct cg_reader *reader, const char *path)
{
    size_t count;
    return &reader->origin[cg_setting_find(path) - cg_settings(&count)];
}

struct cg_where cg_where_given(struct cg_reader *reader, const char *path)
{
    const struct cg_origin *origin = cg_origin_of(reader, path);
    if (origin->given)
        return origin->where;
    return (struct cg_where){reader->file.path, reader->line, NULL};
}

/* What is being stored: to keep the argument lists short. */
struct place {
    struct cg_reader *reader;
    const struct cg_key *key;
    struct cg_where where;
    char path[128]; /* as the user wrote it */
};

static void type_trouble(const struct place *place, const char *must,
                         const struct cg_value *value)
{
    cg_problem(place->reader->problems, place->where, place->path,
               "must be %s (got %s)", must, value->what);
}

/* NaN fails both comparisons and so the band. */
static void store_number(const struct place *place,
                         const struct cg_value *value)
{
    const struct cg_setting *setting = place->key->setting;
    const struct cg_unit *unit = place->key->unit;
    const struct cg_unit *own = cg_unit_find(setting->dimension,
                                             setting->unit);
    bool whole = setting->kind == CG_COUNT;
    if (value->kind != CG_VALUE_NUMBER) {
        type_trouble(place, whole ? "a whole number" : "a number", value);
        return;
    }
    double si = cg_unit_to_si(unit, value->number);
    double low = cg_unit_to_si(own, setting->low);
    double high = cg_unit_to_si(own, setting->high);
    if (!(si >= low && si <= high))
        cg_problem(place->reader->problems, place->where, place->path,
                   "must be %.6g to %.6g%s%s (got %.6g)",
                   cg_unit_from_si(unit, low), cg_unit_from_si(unit, high),
                   unit->suffix[0] != '\0' ? " " : "", unit->suffix,
                   value->number);
    else if (whole && si != floor(si))
        cg_problem(place->reader->problems, place->where, place->path,
                   "must be a whole number (got %.6g)", value->number);
    else
        cg_setting_put(setting, place->reader->c, si);
}

/* -1: there is no such choice. */
static int choice_of(const struct cg_setting *setting, const char *word)
{
    int choice = cg_setting_choice(setting, word);
    const char *ours = cg_trade_value(setting->path, word);
    return choice < 0 && ours != NULL ? cg_setting_choice(setting, ours)
                                      : choice;
}

static void store_choice(const struct place *place,
                         const struct cg_value *value)
{
    const struct cg_setting *setting = place->key->setting;
    char word[CHOICES][CG_NAME_LENGTH], list[256];
    const char *names[CHOICES];
    size_t count = 0;
    for (; count < CHOICES; count++) {
        cg_setting_word(setting, (int)count, word[count]);
        if (word[count][0] == '\0')
            break;
        names[count] = word[count];
    }
    int choice = value->kind == CG_VALUE_TEXT
                     ? choice_of(setting, value->text)
                     : -1;
    if (choice >= 0) {
        cg_setting_put(setting, place->reader->c, choice);
        return;
    }
    const char *text = value->kind == CG_VALUE_TEXT ? value->text : value->what;
    const char *refused = cg_scope_refuses_value(setting->path, text);
    cg_nearest_list(text, names, count, list, sizeof list);
    if (refused != NULL)
        cg_problem(place->reader->problems, place->where, place->path, "%s",
                   refused);
    else if (value->kind == CG_VALUE_TEXT)
        cg_problem(place->reader->problems, place->where, place->path,
                   "unknown \"%.40s\", allowed: %s", text, list);
    else
        cg_problem(place->reader->problems, place->where, place->path,
                   "must be text in quotes (got %s), allowed: %s", text, list);
}

static void store_name(const struct place *place, const struct cg_value *value)
{
    const struct cg_setting *setting = place->key->setting;
    bool free_text = setting->rule == CG_OPTIONAL;
    char trouble[CG_NAME_TROUBLE];
    if (value->kind != CG_VALUE_TEXT) {
        type_trouble(place, free_text ? "a text in quotes" : "a name in quotes",
                     value);
    } else if (free_text ? !cg_text_fits(value->text, trouble)
                         : !cg_name_fits(value->text, trouble)) {
        cg_problem(place->reader->problems, place->where, place->path, "%s",
                   trouble);
    } else {
        char *name = (char *)place->reader->c + setting->offset;
        memset(name, 0, CG_NAME_LENGTH);
        memcpy(name, value->text, strlen(value->text));
    }
}

/* One word more behind those before it; false: no room, or no text. */
static bool add_word(const char *word, char words[CG_WORDS_LENGTH])
{
    size_t used = strlen(words), length = word != NULL ? strlen(word) : 0;
    if (length == 0 || used + length + 2 > CG_WORDS_LENGTH)
        return false;
    if (used > 0)
        words[used++] = ' ';
    memcpy(words + used, word, length + 1);
    return true;
}

/* A list of names, or one text with blanks or commas between them. */
static void store_words(const struct place *place, const struct cg_value *value)
{
    char words[CG_WORDS_LENGTH] = "";
    bool fits = value->list != NULL || (value->kind == CG_VALUE_TEXT &&
                                        strlen(value->text) < sizeof words);
    if (fits && value->list == NULL)
        strcpy(words, value->text);
    int count = value->list != NULL ? config_setting_length(value->list) : 0;
    for (int i = 0; i < count && fits; i++)
        fits = add_word(config_setting_get_string_elem(value->list, i), words);
    for (char *at = words; *at != '\0'; at++)
        if (*at == ',')
            *at = ' ';
    if (fits)
        memcpy((char *)place->reader->c + place->key->setting->offset, words,
               sizeof words);
    else
        type_trouble(place, "a list of names, [\"a\", \"b\"]", value);
}

static void store(const struct place *place, const struct cg_value *value)
{
    switch (place->key->setting->kind) {
    case CG_REAL:
    case CG_COUNT:
        store_number(place, value);
        break;
    case CG_SWITCH:
        if (value->kind == CG_VALUE_TRUTH)
            cg_setting_put(place->key->setting, place->reader->c,
                           value->truth);
        else
            type_trouble(place, "true or false", value);
        break;
    case CG_CHOICE:
        store_choice(place, value);
        break;
    case CG_NAME:
        store_name(place, value);
        break;
    case CG_WORDS:
        store_words(place, value);
        break;
    }
}

void cg_value_store(struct cg_reader *reader, const struct cg_key *key,
                    const struct cg_value *value, struct cg_where where,
                    enum cg_given given)
{
    struct cg_origin *origin = cg_origin_of(reader, key->setting->path);
    struct place place = {reader, key, where, ""};
    cg_key_write(key->setting, key->unit, true, place.path, sizeof place.path);
    if (origin->given && given == CG_GIVEN_KEEP)
        return;
    bool by_set = origin->given && origin->where.file == NULL;
    if ((origin->given && given == CG_GIVEN_TWICE) ||
        (by_set && origin->unit != key->unit)) {
        char other[128], line[32] = "";
        cg_key_write(key->setting, origin->unit, false, other, sizeof other);
        if (!by_set)
            snprintf(line, sizeof line, " in line %u", origin->where.line);
        cg_problem(reader->problems, where, place.path,
                   "given twice, also as %s%s; one is allowed", other, line);
        return;
    }
    *origin = (struct cg_origin){true, where, key->unit};
    store(&place, value);
}

void cg_name_unknown(struct cg_reader *reader, const char *path,
                     const char *what, const char *name,
                     const char *const *names, size_t count)
{
    char list[CG_PROBLEM_LENGTH / 2];
    const char *refused = cg_scope_refuses_value(path, name);
    cg_nearest_list(name, names, count, list, sizeof list);
    if (refused != NULL)
        cg_problem(reader->problems, cg_where_given(reader, path), path, "%s",
                   refused);
    else
        cg_problem(reader->problems, cg_where_given(reader, path), path,
                   "%s \"%.47s\", allowed: %s", what, name, list);
}
