/* What fits coldgap into a system, each page printed to stdout and made from
 * the tables of commands, options and settings alone. */
#ifndef CG_PAGES_H
#define CG_PAGES_H

void cg_page_program(void); /* coldgap.1 */
void cg_page_commands(void); /* its sections */
void cg_page_words(void);
void cg_page_json(void);
void cg_page_config(void);  /* coldgap.cfg.5 */

/* The tables that both completion scripts read, in words of the shell. */
void cg_page_tables(void);

#endif
