// A config kept by the page is answered by the shell with the page's figures.
//
//   node saved.js COLDGAP TOP PAGE

"use strict";

const fs = require("fs");
const os = require("os");
const path = require("path");
const {openRunner, shell, namesOf, fail, finish} = require("./runner.js");

const [coldgap, top, page] = process.argv.slice(2);
const run = openRunner(top, page);
const work = fs.mkdtempSync(path.join(os.tmpdir(), "coldgap-saved-"));
const summary = answer => JSON.parse(answer.out).summary;

const changes = {
    air_twin: ["charge.boost_kPa=55.5", "cooling.air_speed_m_s=22.25"],
    truck_six: ["fuel.lambda=1.75", "rings.top.cold_gap_mm=0.9"],
    nitrous_eight: ["nitrous.flow_g_s=41.5", "duty.name=nitrous_pull"],
};
const usual = ["charge.boost_kPa=88.75", "rings.top.material=plain_steel",
               "rings.top.face=uncoated", "piston.oil_jet=true",
               "engine.name=a \"b\" <c> \\ ;", "margin.duties=settled"];
changes.plain_four = ["charge.charger=belt", ...usual];
let kept = 0;

for (const engine of namesOf(path.join(top, "configs/engines"))) {
    // What was found in the old engine is no longer the new one's.
    if (/^(taught|shop|touched)/.test(engine))
        continue;
    const text = fs.readFileSync(
        path.join(top, "configs/engines", engine + ".cfg"), "utf8");
    const sets = [...changes[engine] || usual, "charge.ambient_C=31.25"]
        .flatMap(set => ["--set", set]);
    const saved = run(["keep", "engine.cfg", ...sets], {"engine.cfg": text});
    const file = path.join(work, engine + ".cfg");
    if (saved.status !== 0) {
        fail(engine, saved.err);
        continue;
    }
    fs.writeFileSync(file, saved.out);
    const own = run(["find", "engine.cfg", "--json", ...sets],
                    {"engine.cfg": text});
    const other = shell(coldgap, ["find", file, "--json"], top);
    if (own.status > 1 || own.status !== other.status) {
        fail(engine, "status", own.status, other.status, own.err, other.err);
        continue;
    }
    const ours = summary(own), theirs = summary(other);
    kept++;
    for (const key of Object.keys(ours)) {
        const a = ours[key].value, b = theirs[key].value;
        const near = typeof a === "number"
            ? Math.abs(a - b) <= 1e-6 * Math.abs(b) || /residual$/.test(key)
            : a === b;
        if (!near)
            fail(engine, key, a, b);
    }
}
fs.rmSync(work, {recursive: true});
console.log(kept + " configs kept");
if (kept < 9)
    fail("too few");
finish();
