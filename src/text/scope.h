/* Which engines coldgap answers for, and words that ask for another: these are
 * refused with a sentence, not as unknown. */
#ifndef CG_SCOPE_H
#define CG_SCOPE_H

/* Two sentences: which engines, and what may be in them.  Never NULL. */
const char *cg_scope(void);

/* Why a setting, by its path, is refused, and what is allowed
 * ("engine.strokes"); NULL: it asks for no other engine.  Cannot fail. */
const char *cg_scope_refuses_key(const char *path);

/* The same of a value of a setting ("fuel.name", "diesel"). */
const char *cg_scope_refuses_value(const char *path, const char *word);

#endif
