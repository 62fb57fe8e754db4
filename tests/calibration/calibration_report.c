#include "calibration_report.h"

#include <ctype.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "setting.h"

static const char *unit_of(const struct fact *fact)
{
    switch (fact->sees) {
    case SEES_ENDS:
        return "mm";
    case SEES_CROWN:
    case SEES_GROOVE:
    case SEES_LINER:
        return fact_changes(fact) ? "K" : "C";
    case SEES_ABOVE_COOLANT:
        return "K";
    case SEES_WALLS:
    case SEES_BRAKE:
        return "%";
    default:
        return "";
    }
}

static double scale_of(const struct fact *fact)
{
    return fact->sees == SEES_ENDS ? 1e3 : 1.0;
}

static void write_constants(const struct calibration *all, FILE *out)
{
    const struct facts *facts = &all->facts;
    fputs("| constant | before | ", out);
    for (size_t i = 0; i < all->laws; i++)
        fprintf(out, "%s, %s | ", all->learned[i].law.gas,
                all->learned[i].law.film);
    fputs("\n|---|---|", out);
    for (size_t i = 0; i < all->laws; i++)
        fputs("---|", out);
    fputs("\n", out);
    for (size_t k = 0; k < facts->constants; k++) {
        const struct constant *c = &facts->constant[k];
        fprintf(out, "| %s | %.3g +- %.0f %% | ", c->input, c->middle,
                100.0 * c->spread);
        for (size_t i = 0; i < all->laws; i++)
            fprintf(out, "%.3g +- %.0f %% | ",
                    learned_value(facts, &all->learned[i], k),
                    100.0 * learned_spread(facts, &all->learned[i], k));
        fputs("\n", out);
    }
    fprintf(out, "| engine to engine | %.0f %% | ",
            100.0 * facts->scatter_middle);
    for (size_t i = 0; i < all->laws; i++)
        fprintf(out, "%.0f %% | ", 100.0 * exp(all->learned[i].scatter));
    fputs("\n| ln evidence | | ", out);
    for (size_t i = 0; i < all->laws; i++)
        fprintf(out, "%.1f | ", all->learned[i].log_evidence);
    fputs("\n| weight | | ", out);
    for (size_t i = 0; i < all->laws; i++)
        fprintf(out, "%.3f | ", all->weight[i]);
    fputs("\n", out);
}

static void write_correlations(const struct calibration *all, FILE *out)
{
    const struct facts *facts = &all->facts;
    const struct learned *l = &all->learned[0];
    fprintf(out, "\nCorrelations, %s, %s:\n\n| |", l->law.gas, l->law.film);
    for (size_t k = 0; k < facts->constants; k++)
        fprintf(out, " %s |", facts->constant[k].input);
    fputs("\n|---|", out);
    for (size_t k = 0; k < facts->constants; k++)
        fputs("---|", out);
    for (size_t k = 0; k < facts->constants; k++) {
        fprintf(out, "\n| %s |", facts->constant[k].input);
        for (size_t j = 0; j <= k; j++)
            fprintf(out, " %.2f |",
                    l->covariance[k][j] /
                        sqrt(l->covariance[k][k] * l->covariance[j][j]));
    }
    fputs("\n", out);
}

static void write_facts(const struct calibration *all, bool held, FILE *out)
{
    const struct facts *facts = &all->facts;
    fprintf(out, "\n%s:\n\n| fact | grade | seen | foreseen | deviation | "
                 "chance |\n|---|---|---|---|---|---|\n",
            held ? "*Checked against* (held back)"
                 : "*Calibrated on*, each foreseen from all others");
    for (size_t f = 0; f < facts->facts; f++) {
        const struct fact *fact = &facts->fact[f];
        if (fact->held != held)
            continue;
        struct foreseen s =
            mix_foreseen(facts, all->learned, all->laws, f);
        double scale = scale_of(fact);
        fprintf(out, "| %s | %s | %s%.4g %s | %.3g +- %.2g | ", fact->name,
                fact->grade,
                !fact->one_sided          ? ""
                : fact->sees == SEES_ENDS ? "below "
                                          : "above ",
                fact->value * scale, unit_of(fact), s.mean * scale,
                s.sd * scale);
        if (fact->one_sided)
            fprintf(out, "| %.2f |\n", s.chance);
        else
            fprintf(out, "%+.1f | |\n", fact_deviation(fact, &s));
    }
}

void report_markdown(const struct calibration *all, FILE *out)
{
    write_constants(all, out);
    write_correlations(all, out);
    write_facts(all, false, out);
    write_facts(all, true, out);
}

void report_data(const struct calibration *all, FILE *out)
{
    const struct facts *facts = &all->facts;
    fputs("# Each fact against what the others (calibrated on) or all of those\n"
          "# (held back) foresee: deviation in standard deviations; of a\n"
          "# one-sided fact the normal number with its chance, below 0: unlikely\n"
          "# fact  kind  held  one_sided  deviation  chance\n",
          out);
    for (size_t f = 0; f < facts->facts; f++) {
        const struct fact *fact = &facts->fact[f];
        struct foreseen s =
            mix_foreseen(facts, all->learned, all->laws, f);
        fprintf(out, "\"%s\" \"%s\" %d %d %.4f %.4g\n", fact->name, fact->kind,
                fact->held, fact->one_sided, fact_deviation(fact, &s),
                fact->one_sided ? s.chance : NAN);
    }
}

static void write_row(const struct calibration *all, size_t law, FILE *out)
{
    const struct facts *facts = &all->facts;
    const struct learned *l = &all->learned[law], *first = &all->learned[0];
    size_t n = facts->constants;
    fprintf(out, "    {\"%s\", CG_FILM_%s, %.3f, \\\n     {", l->law.gas,
            strcmp(l->law.film, "constant") == 0 ? "CONSTANT" : "REYNOLDS",
            all->weight[law]);
    for (size_t k = 0; k < n; k++)
        fprintf(out, "%.3f%s", facts->constant[k].spread *
                                   (l->mean[k] - first->mean[k]),
                k + 1 < n ? ", " : "}, \\\n     {");
    for (size_t k = 0; k < n; k++)
        fprintf(out, "%.3f%s", learned_spread(facts, l, k),
                k + 1 < n ? ", " : "}, \\\n     {");
    for (size_t k = 0; k < n; k++) {
        fputs(k > 0 ? "      {" : "{", out);
        for (size_t j = 0; j < n; j++)
            fprintf(out, "%.2f%s",
                    l->covariance[k][j] /
                        sqrt(l->covariance[k][k] * l->covariance[j][j]),
                    j + 1 < n ? ", " : k + 1 < n ? "}, \\\n" : "}");
    }
    fprintf(out, "}}%s\n", law + 1 < all->laws ? ", \\" : "");
}

/* CG_CALIBRATED_ and the words of a key, up to `end`. */
static void write_name(const char *key, char end, FILE *out)
{
    fputs("#define CG_CALIBRATED_", out);
    for (; *key != end; key++)
        fputc(*key == '.' ? '_' : toupper((unsigned char)*key), out);
}

/* Settings move together. */
static void write_defaults(const struct facts *facts,
                           const struct learned *first, size_t k, FILE *out)
{
    const struct constant *constant = &facts->constant[k];
    double moved = learned_value(facts, first, k) / constant->middle;
    for (size_t j = 0; j < constant->settings; j++) {
        const char *middle = strchr(constant->setting[j], '=') + 1;
        write_name(constant->setting[j], '=', out);
        fprintf(out, " %.3g\n", moved * atof(middle));
    }
    write_name(constant->input, '\0', out);
    fprintf(out, "_PCT %.2g\n", 100.0 * learned_spread(facts, first, k));
}

/* The setting of a key with a unit at its end. */
static void write_path(const char *key, FILE *out)
{
    char path[128];
    size_t n = strcspn(key, "=");
    snprintf(path, sizeof path, "%.*s", (int)n, key);
    while (n > 0 && cg_setting_find(path) == NULL)
        path[--n] = '\0';
    fprintf(out, "\"%s\"", path);
}

static void write_paths(const struct facts *facts, FILE *out)
{
    fputs("/* Their settings. */\n"
          "enum { CG_CALIBRATED_SETTINGS = 4 };\n"
          "#define CG_CALIBRATED_PATHS \\\n",
          out);
    for (size_t k = 0; k < facts->constants; k++) {
        const struct constant *constant = &facts->constant[k];
        fputs("    {", out);
        for (size_t j = 0; j < constant->settings; j++) {
            fputs(j > 0 ? ", \\\n     " : "", out);
            write_path(constant->setting[j], out);
        }
        fputs(k + 1 < facts->constants ? "}, \\\n" : "}\n\n", out);
    }
}

void report_header(const struct calibration *all, FILE *out)
{
    const struct facts *facts = &all->facts;
    const struct learned *first = &all->learned[0];
    fputs("/* The constants as calibrated on facts from outside: defaults of the\n"
          " * settings, and each law by itself.  Written by tests/calibration\n"
          " * (calibrate FACTS --write FILE), which says what from; not by hand. */\n"
          "#ifndef CG_CALIBRATED_H\n#define CG_CALIBRATED_H\n\n",
          out);
    for (size_t k = 0; k < facts->constants; k++)
        write_defaults(facts, first, k, out);
    fprintf(out, "#define CG_CALIBRATED_ENGINE_PCT %.2g\n\n",
            100.0 * exp(first->scatter));
    fputs("/* Inputs, in the order of the rows below. */\n"
          "#define CG_CALIBRATED_INPUTS \\\n    ",
          out);
    for (size_t k = 0; k < facts->constants; k++)
        fprintf(out, "\"%s\"%s", facts->constant[k].input,
                k + 1 < facts->constants ? ", " : "\n\n");
    fprintf(out, "enum { CG_CALIBRATED = %zu };\n\n", facts->constants);
    write_paths(facts, out);
    fputs("/* Law of gas heat and of film, weight; ln of each constant over the\n"
          " * default, its spread (of the ln), correlations. */\n"
          "#define CG_CALIBRATED_LAWS \\\n",
          out);
    for (size_t i = 0; i < all->laws; i++)
        write_row(all, i, out);
    fputs("\n#endif\n", out);
}
