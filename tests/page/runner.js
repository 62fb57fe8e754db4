// The page's program without a browser, as run.js runs it; and the shell's.

"use strict";

const fs = require("fs");
const path = require("path");
const {spawnSync} = require("child_process");

// top: the sources; page: the folder with coldgap.wasm.
function openRunner(top, page) {
    const text = fs.readFileSync(path.join(top, "src/page/run.js"), "utf8");
    const coldgapRunner = new Function(text + "; return coldgapRunner;")();
    const module = new WebAssembly.Module(
        fs.readFileSync(path.join(page, "coldgap.wasm")));
    const files = {};
    const gather = folder => {
        for (const name of fs.readdirSync(path.join(top, folder))) {
            const inner = folder + "/" + name;
            if (fs.statSync(path.join(top, inner)).isDirectory())
                gather(inner);
            else if (/\.(cfg|csv)$/.test(name))
                files["/" + inner] = fs.readFileSync(path.join(top, inner));
        }
    };
    gather("configs");
    return coldgapRunner(module, files);
}

const shell = (coldgap, words, cwd) => {
    const {status, stdout, stderr} = spawnSync(coldgap, words,
        {cwd, encoding: "utf8", maxBuffer: 1 << 26,
         env: {...process.env, COLDGAP_CONFIGS: cwd + "/configs"}});
    // where the page has its own
    return {status, out: stdout, err: stderr.replaceAll(cwd + "/configs",
                                                        "/configs")};
};

const namesOf = folder => fs.readdirSync(folder).sort()
    .filter(name => name.endsWith(".cfg")).map(name => name.slice(0, -4));

// What is wrong is told at once; the end is a status.
const failures = {count: 0};
function fail(...words) {
    console.log("FAILED:", ...words);
    failures.count++;
}
function finish() {
    console.log(failures.count + " failed");
    process.exitCode = failures.count > 0 ? 1 : 0;
}

module.exports = {openRunner, shell, namesOf, fail, finish};
