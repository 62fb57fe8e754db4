// What is wrong is the same line in the page as in the shell.
//
//   node bad.js COLDGAP TOP PAGE

"use strict";

const fs = require("fs");
const os = require("os");
const path = require("path");
const {openRunner, shell, namesOf, fail, finish} = require("./runner.js");

const [coldgap, top, page] = process.argv.slice(2);
const run = openRunner(top, page);
const folder = path.join(top, "tests/bad");
const work = fs.mkdtempSync(path.join(os.tmpdir(), "coldgap-bad-"));
let wrong = 0;

for (const name of namesOf(folder)) {
    const bytes = fs.readFileSync(path.join(folder, name + ".cfg"));
    if (/@include|"\.\.?\/|evidence_from|\.csv|log/.test(bytes.toString("latin1")))
        continue; // files beside it are not in the page
    const own = run(["find", "x.cfg", "--json"], {"x.cfg": bytes});
    fs.writeFileSync(path.join(work, "x.cfg"), bytes);
    const {spawnSync} = require("child_process");
    const other = spawnSync(coldgap, ["find", "x.cfg", "--json"], {
        cwd: work, encoding: "utf8",
        env: {...process.env, COLDGAP_CONFIGS: top + "/configs"}});
    wrong++;
    if (own.status !== other.status || own.err !== other.stderr
            .replaceAll(top + "/configs", "/configs"))
        fail(name, own.status, other.status, "\n" + own.err, "\n" +
             other.stderr);
    if (own.status > 1 && own.out !== "")
        fail(name, "half an answer");
}
const sets = ["charge.boost_kPa=abc", "charge.boost_kPa=1e9", "fuel.name=milk",
              "charge.bost_kPa=3", "rings.top.face=x", "engine.cylinders=2.5"];
for (const set of sets) {
    const words = ["find", "configs/engines/iron_six.cfg", "--set", set];
    const own = run(words), other = shell(coldgap, words, top);
    wrong++;
    if (own.status !== 2 || other.status !== 2 || own.err !== other.err)
        fail(set, own.err, other.err);
}
// What a page has no system for is refused in words too.
for (const words of [["find", "configs/engines/iron_six.cfg", "-o", "out"],
                     ["sweep", "configs/engines/iron_six.cfg", "--vary",
                      "charge.boost_kPa=0:50:2", "-o", "out"],
                     ["find", "configs/engines/iron_six.cfg", "--report",
                      "x.html"]]) {
    const own = run(words);
    if (own.status !== 4 || !/the page writes no file/.test(own.err))
        fail(words.join(" "), own.status, own.err);
}
fs.rmSync(work, {recursive: true});
console.log(wrong + " that are wrong");
if (wrong < 100)
    fail("too few");
finish();
