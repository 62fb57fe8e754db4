// One file of all: node assemble.js TOP PROGRAM.wasm VERSIONS OUT.html
//
// The page loads nothing: the program, the shipped configs, script and style
// are in it, and its policy allows no more than these, by their hashes.

"use strict";

const fs = require("fs");
const path = require("path");
const zlib = require("zlib");
const crypto = require("crypto");

const [top, program, versions, out] = process.argv.slice(2);
const page = name => fs.readFileSync(path.join(top, "src/page", name), "utf8");
const hash = text =>
    "'sha256-" + crypto.createHash("sha256").update(text).digest("base64") + "'";

// What ends a block early, in a text of any block.
const held = text => text.replaceAll("</", "<\\/").replaceAll("<!--", "<\\!--");

function shipped() {
    const files = {};
    for (const room of ["engines", "duties", "materials", "notebooks", "logs"]) {
        const folder = path.join(top, "configs", room);
        for (const name of fs.readdirSync(folder).sort())
            if (/\.(cfg|csv)$/.test(name))
                files["/configs/" + room + "/" + name] =
                    fs.readFileSync(path.join(folder, name), "utf8");
    }
    return JSON.stringify(files).replaceAll("<", "\\u003c");
}

const sources = fs.readFileSync(versions, "utf8").trim()
    .split("\n").join(", ");
const notice =
    "coldgap is free software under the GNU General Public License, version 3 " +
    "or later, by the coldgap authors. In it are GSL (GPL 3 or later), " +
    "libconfig (LGPL 2.1) and wasi-libc (MIT and others), built from Debian's " +
    "sources: " + sources + ". Who hands the file on hands on these rights, " +
    "and the sources to whoever asks.";

const script = ["state.js", "runs.js", "report.js", "fields.js", "page.js"]
    .map(page).join("\n").replaceAll("\"use strict\";\n", "");
const parts = {
    STYLE: page("page.css"),
    SCRIPT: "\"use strict\";\n" + script,
    WORKER: held(page("run.js") + page("worker.js")),
    FILES: shipped(),
    PROGRAM: zlib.gzipSync(fs.readFileSync(program), {level: 9})
        .toString("base64"),
    NOTICE: notice,
    ABOUT: notice,
};
parts.POLICY = "default-src 'none'; " +
    "script-src " + hash(parts.SCRIPT) + " 'wasm-unsafe-eval' blob:; " +
    "style-src " + hash(parts.STYLE) + "; worker-src blob:; img-src data:; " +
    "base-uri 'none'; form-action 'none'";
const whole = page("page.html")
    .replace(/@([A-Z]+)@/g, (all, name) => parts[name]);
fs.writeFileSync(out + ".part", whole);
fs.renameSync(out + ".part", out);
