#include "page_style.h"

#include "cautions.h"

/* Colours by what they are for, light and dark; each pair of letters and ground
 * is held to a contrast of 4.5 by tests/cli/run_page.sh.  Figures stay on white
 * in the dark: their greys and colours are made for it. */
#define LIGHT                                                                \
    "--paper:#ffffff;--ink:#1b1b1b;--faint:#505050;--rule:#767676;"          \
    "--band:#f3f3f0;--caution:#fff3cf;--caution-ink:#3d2a00;"                \
    "--good:#e2f4e4;--good-ink:#0d4a1a;--bad:#fde4e0;--bad-ink:#7d1409;"
#define DARK                                                                 \
    "--paper:#15181b;--ink:#ebebe8;--faint:#b4b8bc;--rule:#85898d;"          \
    "--band:#202428;--caution:#392d0d;--caution-ink:#ffe8ac;"                \
    "--good:#12331a;--good-ink:#c4f0cd;--bad:#44140e;--bad-ink:#ffd6d0;"

static const char style[] =
    ":root{color-scheme:light dark;" LIGHT "}\n"
    "@media (prefers-color-scheme:dark){:root{" DARK "}}\n"
    "*{box-sizing:border-box}\n"
    "body{margin:0;background:var(--paper);color:var(--ink);"
    "font:1.0625rem/1.5 system-ui,\"DejaVu Sans\",Verdana,sans-serif}\n"
    "main{max-width:52rem;margin:0 auto;padding:1rem}\n"
    "h1{font-size:1.6rem;line-height:1.2;margin:.4rem 0}\n"
    "h2{font-size:1.3rem;line-height:1.25;margin:2rem 0 .6rem;"
    "border-bottom:1px solid var(--rule);padding-bottom:.2rem}\n"
    "h3{font-size:1.08rem;margin:1.4rem 0 .4rem}\n"
    "p{margin:.6rem 0}\n"
    "code{font:0.95em ui-monospace,\"DejaVu Sans Mono\",monospace;"
    "overflow-wrap:anywhere}\n"
    "pre{font:0.9rem/1.45 ui-monospace,\"DejaVu Sans Mono\",monospace;"
    "margin:.6rem 0}\n"
    ".hand{white-space:pre-wrap;border-left:.25rem solid var(--rule);"
    "padding-left:.4rem}\n"
    ".hand span{display:block;padding-left:2em;text-indent:-2em}\n"
    ".run,.last{color:var(--faint);font-size:.9rem}\n"
    ".last{border-top:1px solid var(--rule);padding-top:.6rem;"
    "margin-top:2rem}\n"
    ".cautions{background:var(--caution);color:var(--caution-ink);"
    "border-left:.4rem solid var(--caution-ink);padding:.6rem .9rem;"
    "margin:1rem 0}\n"
    ".cautions h2{font-size:1.08rem;margin:0;border:0;padding:0}\n"
    ".cautions ul{margin:.3rem 0 0;padding-left:1.2rem}\n"
    ".unseen{position:absolute;width:1px;height:1px;overflow:hidden;"
    "clip-path:inset(50%)}\n"
    ".answer{font-size:1.15rem;margin:.8rem 0}\n"
    ".answer strong{font-size:1.75rem;line-height:1.1;white-space:nowrap}\n"
    ".answer span{white-space:nowrap}\n"
    ".verdict{padding:.6rem .9rem;border-left:.4rem solid;"
    "font-weight:600}\n"
    ".good{background:var(--good);color:var(--good-ink)}\n"
    ".bad{background:var(--bad);color:var(--bad-ink)}\n"
    ".note{border-left:.25rem solid var(--rule);padding-left:.7rem}\n"
    ".table{overflow-x:auto;margin:1rem 0}\n"
    ".table:focus-visible{outline:3px solid var(--rule);"
    "outline-offset:2px}\n"
    "table{border-collapse:collapse;width:100%;font-size:.97rem;"
    "font-variant-numeric:tabular-nums}\n"
    "caption{text-align:left;font-weight:600;padding:.2rem 0 .4rem}\n"
    "caption span{display:block;position:sticky;left:0;"
    "max-width:calc(100vw - 2rem)}\n"
    "tr{background:var(--paper)}\n"
    "th,td{padding:.35rem .6rem;text-align:right;vertical-align:top;"
    "border-bottom:1px solid var(--rule)}\n"
    "td{white-space:nowrap}\n"
    ".plain{white-space:normal}\n"
    "th:first-child{text-align:left;font-weight:400;padding-left:.3rem}\n"
    "thead th,thead th:first-child{font-weight:600;background:var(--band);"
    "vertical-align:bottom}\n"
    /* The row's name stays while the rest is scrolled. */
    "th:first-child{position:sticky;left:0;background:inherit}\n"
    "figure{margin:1.2rem 0;background:#ffffff;color:#1b1b1b;"
    "border:1px solid var(--rule);padding:.4rem}\n"
    "figure svg{display:block;width:100%;max-width:40rem;height:auto;"
    "margin:0 auto}\n"
    /* What the program draws has letters for a phone. */
    "figure svg[viewBox^=\"0 0 360 \"]{max-width:30rem}\n"
    "figure [font-family=\"DejaVu Sans\"]{font-family:\"DejaVu Sans\",Verdana,"
    "system-ui,sans-serif}\n"
    "figcaption{font-size:.95rem;padding:.3rem .4rem}\n"
    ".blank{display:flex;gap:.6rem;margin:1.6rem 0}\n"
    ".blank span{flex:1;border-bottom:1px solid var(--ink)}\n"
    "li{margin:.25rem 0}\n"
    "@media (max-width:30rem){th,td{padding:.3rem .35rem}"
    "table{font-size:.93rem}pre{font-size:.8rem}}\n";

static const char print_style[] =
    "@media print{:root{color-scheme:light;" LIGHT "}\n"
    "body{font-size:10.5pt}main{max-width:none;padding:0}\n"
    ".cautions,.verdict,.good,.bad,thead th{print-color-adjust:exact;"
    "-webkit-print-color-adjust:exact}\n"
    "pre{font-size:8.5pt}.table{overflow:visible}table{font-size:9.5pt}"
    "caption span{max-width:none}th:first-child{position:static}\n"
    "thead{display:table-header-group}\n"
    "tr,.table,figure,.hand,.cautions,.verdict,.answer,.note{"
    "break-inside:avoid}\n"
    "h1,h2,h3,caption{break-after:avoid}.blank+.blank{break-before:avoid}\n"
    "th,td{padding:.2rem .5rem}figure svg{max-width:11cm}"
    "figure{margin:.8rem 0}p,li{orphans:3;widows:3}\n"
    /* All sizes hang on the root's; two columns, and little air. */
    "@page sheet{margin:9mm 9mm 13mm}.sheet body{page:sheet}\n"
    ".sheet{font-size:7.3pt}.sheet body,.sheet table{font-size:1rem;"
    "line-height:1.2}.sheet main{columns:2;column-gap:5mm}\n"
    ".sheet h1,.sheet .run,.sheet .last{column-span:all}"
    ".sheet h1{margin:0}.sheet h2{font-size:1.15rem;margin:.5rem 0 .15rem}"
    ".sheet p,.sheet .table,.sheet ol{margin:.2rem 0}"
    ".sheet ol,.sheet ul{padding-left:1.5rem}"
    ".sheet .cautions{padding:.2rem .5rem;margin:.3rem 0}"
    ".sheet .cautions ul{margin:0}.sheet .blank{margin:.8rem 0}"
    ".sheet th,.sheet td{padding:0 .2rem;white-space:normal}"
    ".sheet .verdict{padding:.1rem .5rem}.sheet caption{padding:.1rem 0}"
    ".sheet .last{padding-top:.2rem;margin-top:.4rem}"
    ".sheet li{margin:.05rem 0}}\n";

const char *cg_page_style(void)
{
    return style;
}

/* Cautions on every sheet of paper, in any size of it. */
void cg_page_style_print(FILE *out)
{
    fprintf(out,
            "@page{margin:15mm 14mm 18mm;@bottom-center{content:\"%s\";"
            "font:8pt sans-serif;color:#1b1b1b}}\n%s",
            cg_cautions_short(), print_style);
}
