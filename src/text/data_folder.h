/* Where the shipped configs and scripts are. */
#ifndef CG_DATA_FOLDER_H
#define CG_DATA_FOLDER_H

#include <stdbool.h>
#include <stddef.h>

#include "status.h"

enum { CG_PATH_LENGTH = 1024, CG_DATA_NAMES = 64 };

/* Names of the files FOLDER/NAME.cfg, sorted. */
struct cg_data_names {
    size_t count;
    char name[CG_DATA_NAMES][48];
    const char *list[CG_DATA_NAMES]; /* points into name */
};

/* The folder of shipped configs: environment COLDGAP_CONFIGS; else the
 * installed one, found from where the program stands, so that an installed
 * tree may be moved; else "configs" beside the program (a build folder links
 * it); else, where the system does not tell where that is, the place it was
 * built for or that of packages.  Cannot fail: whether it can be read shows
 * when it is read. */
void cg_data_folder(char path[CG_PATH_LENGTH]);

/* Writes "DATA/folder/name.cfg".  CG_BAD_INPUT: longer than the room. */
enum cg_status cg_data_path(const char *folder, const char *name,
                            char path[CG_PATH_LENGTH], struct cg_error *error);

/* Writes the path of a file of the picture scripts, which stand beside the
 * folder of configs; false if it is not there. */
bool cg_plots_path(const char *name, char path[CG_PATH_LENGTH]);

/* The folder of the picture scripts: environment COLDGAP_PLOTS, else as above;
 * "" where there is none. */
void cg_plots_folder(char path[CG_PATH_LENGTH]);

/* Lists DATA/folder; at most CG_DATA_NAMES are kept.  CG_FILE: it cannot be
 * read. */
enum cg_status cg_data_list(const char *folder, struct cg_data_names *names,
                            struct cg_error *error);

#endif
