/* What a table is of: its head says so, and so do the titles of pictures. */
#ifndef CG_TABLE_OF_H
#define CG_TABLE_OF_H

#include "case.h"

enum { CG_TABLE_OF_LENGTH = 64 };

/* Each is text as it is shown; a longer one ends in "...". */
struct cg_table_of {
    const char *config; /* the config file's name, and what was changed */
    char engine[CG_TABLE_OF_LENGTH]; /* engine.name; else the config file's */
    char boost[CG_TABLE_OF_LENGTH];  /* "150 kPa" */
    char fuel[CG_TABLE_OF_LENGTH], duty[CG_TABLE_OF_LENGTH];
};

/* Sets it from a case and the words of the command line that made it: the
 * config's path, and after it " --set ..." (the caller keeps them). */
void cg_table_of_set(const char *config, const struct cg_case *c,
                     struct cg_table_of *of);

/* A title and behind it what is told of: "Gas past the rings: my_engine.cfg,
 * 150 kPa boost, pump, dyno pull"; what is varied is left out. */
struct cg_table_title {
    char text[6 * CG_TABLE_OF_LENGTH];
};
struct cg_table_title cg_table_title(const char *title,
                                     const struct cg_table_of *of);

/* What the tables' rows differ in is nothing that a head could say. */
void cg_table_of_vary(struct cg_table_of *of, const char *setting);

#endif
