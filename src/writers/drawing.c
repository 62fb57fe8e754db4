#define _XOPEN_SOURCE 700 /* mkdtemp, symlink, realpath */

#include "drawing.h"

#include <dirent.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "child.h"
#include "data_folder.h"
#include "open_parts.h"
#include "text_file.h"

#define GNUPLOT_ASKS "dir='tables'; to='.'; outs='svg'; page=1"

static void trouble(struct cg_drawing *drawing, const char *what)
{
    snprintf(drawing->trouble, sizeof drawing->trouble, "%s: %s", what,
             strerror(errno));
}

/* FOLDER/NAME; false when it is too long. */
static bool join(char path[CG_DRAWING_PATH], const char *folder,
                 const char *name)
{
    int length = snprintf(path, CG_DRAWING_PATH, "%s/%s", folder, name);
    return length > 0 && length < CG_DRAWING_PATH;
}

/* A link inside the drawing's folder to a folder elsewhere. */
static bool link_in(const struct cg_drawing *drawing, const char *target,
                    const char *name)
{
    char path[CG_DRAWING_PATH];
    char *whole = realpath(target, NULL);
    bool linked = whole != NULL && join(path, drawing->folder, name) &&
                  symlink(whole, path) == 0;
    if (linked)
        cg_open_parts_add(path);
    free(whole);
    return linked;
}

/* A folder that nobody else can write into. */
static bool make_folder(struct cg_drawing *drawing)
{
    const char *temporary = getenv("TMPDIR");
    if (temporary == NULL || temporary[0] != '/')
        temporary = "/tmp";
    cg_open_parts_wait();
    bool made = join(drawing->folder, temporary, "coldgap-XXXXXX") &&
                mkdtemp(drawing->folder) != NULL;
    if (made)
        cg_open_parts_pass(drawing->folder);
    cg_open_parts_go();
    return made;
}

void cg_drawing_begin(const char *out, struct cg_drawing *drawing)
{
    char plots[CG_PATH_LENGTH];
    cg_plots_folder(plots);
    memset(drawing, 0, sizeof *drawing);
    if (!make_folder(drawing)) {
        trouble(drawing, "no folder to draw in");
        drawing->folder[0] = '\0';
    } else if (!link_in(drawing, plots, "plots")) {
        trouble(drawing, "no scripts to draw with");
    } else if (out != NULL && !link_in(drawing, out, "tables")) {
        trouble(drawing, "no tables to draw from");
    }
    if (out != NULL)
        snprintf(drawing->tables, sizeof drawing->tables, "%s", out);
    else if (drawing->folder[0] != '\0' &&
             join(drawing->tables, drawing->folder, "tables"))
        cg_open_parts_add(drawing->tables);
    else
        drawing->tables[0] = '\0';
}

/* Removes a folder and what is in it; links go, what they point to stays. */
static void remove_folder(const char *folder)
{
    char path[CG_DRAWING_PATH];
    struct stat about;
    DIR *dir = opendir(folder);
    if (dir == NULL)
        return;
    for (struct dirent *entry; (entry = readdir(dir)) != NULL;) {
        if (strcmp(entry->d_name, ".") == 0 ||
            strcmp(entry->d_name, "..") == 0 ||
            !join(path, folder, entry->d_name) || lstat(path, &about) != 0)
            continue;
        if (S_ISDIR(about.st_mode))
            remove_folder(path);
        else
            unlink(path);
    }
    closedir(dir);
    rmdir(folder);
}

void cg_drawing_end(struct cg_drawing *drawing)
{
    if (drawing->folder[0] != '\0')
        remove_folder(drawing->folder);
    cg_open_parts_passed();
    drawing->folder[0] = '\0';
}

/* Runs gnuplot on one script; its own settings at home are not read. */
static bool run(struct cg_drawing *drawing, const char *name)
{
    char gnuplot[CG_DRAWING_PATH], script[64];
    if (!cg_child_find("gnuplot", gnuplot, sizeof gnuplot)) {
        snprintf(drawing->trouble, sizeof drawing->trouble,
                 "gnuplot is not installed");
        return false;
    }
    snprintf(script, sizeof script, "plots/%s.gp", name);
    char *words[] = {gnuplot, "-d", "-e", GNUPLOT_ASKS, script, NULL};
    if (cg_child_run(drawing->folder, words) == 0)
        return true;
    return false;
}

void cg_drawing_make(struct cg_drawing *drawing, const char *name, char **svg)
{
    char path[CG_DRAWING_PATH], file[64];
    struct cg_error error = {CG_OK, ""};
    *svg = NULL;
    if (drawing->trouble[0] != '\0')
        return;
    snprintf(file, sizeof file, "%s.svg", name);
    snprintf(drawing->failed, sizeof drawing->failed,
             "gnuplot could not draw plots/%s.gp", name);
    if (!join(path, drawing->folder, file))
        return;
    cg_open_parts_add(path);
    if (run(drawing, name) && cg_text_read(path, svg, &error) == CG_OK)
        drawing->failed[0] = '\0';
    unlink(path);
    cg_open_parts_drop(path);
}
