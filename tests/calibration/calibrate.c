/* Finds the uncertain constants from the facts, each law by itself, and says
 * how well each fact is met by the others.
 *
 *   calibrate FACTS                  the tables for tests/README.md
 *   calibrate FACTS --data FILE      and what tests/calibration/calibration.gp draws
 *   calibrate FACTS --write HEADER   and the defaults: models/case/calibrated.h
 *   calibrate FACTS --check HEADER   exit 1 if the defaults are others
 *
 * Exit status 2: bad usage or facts; 3: the model failed; 4: a file.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "heat_transfer.h"
#include "calibration_report.h"

/* Numbers are printed to a few digits: two runs of the same model agree in
 * them but for the last. */
#define AGREE 0.02

static FILE *open_file(const char *path, const char *how)
{
    FILE *file = fopen(path, how);
    if (file == NULL) {
        perror(path);
        exit(4);
    }
    return file;
}

static void close_file(const char *path, FILE *file)
{
    if (fclose(file) != 0) {
        perror(path);
        exit(4);
    }
}

static void learn_all(struct calibration *all)
{
    static const char *const films[] = {"constant", "reynolds"};
    size_t gases;
    double evidence[LAWS];
    const struct cg_heat_transfer *gas = cg_heat_transfers(&gases);
    for (size_t f = 0; f < 2; f++)
        for (size_t g = 0; g < gases; g++) {
            struct law law = {gas[g].name, films[f]};
            fprintf(stderr, "%s, %s\n", law.gas, law.film);
            struct learned *l = &all->learned[all->laws];
            learn(&all->facts, &law, l);
            fprintf(stderr, "  %.0f draws count, %.0f at least; straight to "
                            "%.2f of a fact's spread\n",
                    l->effective, l->worst_effective, l->bent);
            evidence[all->laws++] = l->log_evidence;
        }
    mix_weights(&all->facts, all->laws, evidence, all->weight);
}

/* The next number, or false at the end; words and names are passed over. */
static bool next_number(FILE *file, double *number)
{
    char word[64], *end;
    while (fscanf(file, "%63s", word) == 1) {
        const char *digits = word + strspn(word, "{");
        *number = strtod(digits, &end);
        if (end != digits)
            return true;
    }
    return false;
}

/* Whether two headers agree, number by number. */
static bool agree(const char *path, const char *fresh)
{
    FILE *a = open_file(path, "r"), *b = open_file(fresh, "r");
    double x, y;
    bool same = true, more_a, more_b;
    do {
        more_a = next_number(a, &x);
        more_b = next_number(b, &y);
        double off = more_a && more_b ? x - y : 0.0;
        double size = more_a && more_b ? (y < 0.0 ? -y : y) : 0.0;
        bool near = off <= AGREE * (1.0 + size) && -off <= AGREE * (1.0 + size);
        if (more_a && more_b && !near)
            fprintf(stderr, "%s: %g, calibrated %g\n", path, x, y);
        same &= near && more_a == more_b;
    } while (more_a && more_b);
    fclose(a);
    fclose(b);
    return same;
}

static void write_header(const struct calibration *all, const char *path)
{
    FILE *file = open_file(path, "w");
    report_header(all, file);
    close_file(path, file);
}

static int run(int argc, char **argv, struct calibration *all)
{
    int status = 0;
    facts_read(argv[1], &all->facts);
    learn_all(all);
    report_markdown(all, stdout);
    report_power(all, stdout);
    for (int i = 2; i < argc; i += 2) {
        const char *path = argv[i + 1];
        if (strcmp(argv[i], "--data") == 0) {
            FILE *file = open_file(path, "w");
            report_data(all, file);
            close_file(path, file);
        } else if (strcmp(argv[i], "--write") == 0) {
            write_header(all, path);
        } else {
            write_header(all, "calibrated.part");
            status = agree(path, "calibrated.part") ? status : 1;
            remove("calibrated.part");
        }
    }
    for (size_t i = 0; i < all->laws; i++)
        learned_free(&all->learned[i]);
    facts_free(&all->facts);
    return status;
}

int main(int argc, char **argv)
{
    static struct calibration all;
    bool known = argc >= 2 && argc % 2 == 0;
    for (int i = 2; known && i < argc; i += 2)
        known = strcmp(argv[i], "--data") == 0 ||
                strcmp(argv[i], "--write") == 0 ||
                strcmp(argv[i], "--check") == 0;
    if (!known) {
        fputs("calibrate FACTS [--data|--write|--check FILE]\n", stderr);
        return 2;
    }
    return run(argc, argv, &all);
}
