/* Two builds of an engine side by side: which settings differ, which of those
 * only follow from others, and whether what was found in the one says something
 * of the other's top ring gap.
 *
 * Compared is what the configs say, before any evidence has moved it.  A run
 * without contact stands for the same parts alone: another engine earns nothing
 * (evidence_gap.h), and a build with another piston, ring, bore or size is
 * another engine to its ring's ends. */
#ifndef CG_BUILD_CHANGE_H
#define CG_BUILD_CHANGE_H

#include <stdbool.h>
#include <stddef.h>

#include "evidence.h"
#include "setting.h"

/* At most: rows of the setting table, and what is looked up by name. */
enum { CG_BUILD_CHANGES = 256 };

/* What a name of the config stands for, where two configs give one name two
 * meanings: a metal or face of the user's own, a duty of his own. */
enum cg_build_matter {
    CG_MATTER_PISTON,
    CG_MATTER_RING_TOP,
    CG_MATTER_RING_SECOND,
    CG_MATTER_RING_OIL,
    CG_MATTER_FACE,
    CG_MATTER_BORE,
    CG_MATTER_BLOCK,
    CG_MATTER_DUTY,
    CG_MATTER_SURVIVE, /* the duties of margin.duties */
    CG_MATTERS
};

struct cg_build_changes {
    size_t count;
    const struct cg_setting *setting[CG_BUILD_CHANGES]; /* in table order */
    bool follows[CG_BUILD_CHANGES]; /* left at its default, which another
                                       setting moved */
    bool matter[CG_MATTERS];        /* same name, other meaning */
    bool model; /* what the model takes the parts to be: its laws of gas heat
                   and film, and the coefficients that go with them */
    bool parts; /* other parts, as the top ring's ends see them: the engine's
                   size, piston, rings, bore, and their metals */
};

/* "piston alloy", "top ring's metal", ...; never NULL. */
const char *cg_build_matter_word(enum cg_build_matter matter);

/* Compares; of numbers equal but for the last bits is equal, and not given is
 * equal to not given.  Cannot fail. */
void cg_build_compare(const struct cg_case *then, const struct cg_case *now,
                      struct cg_build_changes *changes);

/* Whether nothing differs.  Cannot fail. */
bool cg_build_same(const struct cg_build_changes *changes);

/* What an entry of the old build's evidence is to the new build. */
enum cg_proof {
    CG_PROOF_HOLDS,   /* no contact in a run at least as hard, same parts */
    CG_PROOF_EASIER,  /* no contact, but in a run that closed less */
    CG_PROOF_PARTS,   /* no contact, but with other parts */
    CG_PROOF_MODEL,   /* no contact, but closures by another model */
    CG_PROOF_OTHER,   /* found in another engine: it earned nothing then */
    CG_PROOF_WARNS,   /* ends that touched: no build may be filed below them
                         that is not shown to be easier */
    CG_PROOF_MEASURED /* a temperature or share: moves the model, proves no
                         gap */
};

/* "holds", "easier", ...; never NULL. */
const char *cg_proof_word(enum cg_proof proof);

/* Of an entry whose run closed by `run`, where the new build's hardest duty
 * closes by `closure`, both by the model as the old build taught it [m]
 * (cg_evidence_as_hard).  Cannot fail. */
enum cg_proof cg_build_proof(const struct cg_evidence_entry *entry, double run,
                             double closure,
                             const struct cg_build_changes *changes);

#endif
