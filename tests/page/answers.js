// The page's answers and the shell's: every shipped engine, every shipped duty
// that it may have.  Numbers within 1e-9 of themselves or 1e-12 m; texts equal.
//
//   node answers.js COLDGAP TOP PAGE

"use strict";

const path = require("path");
const {openRunner, shell, namesOf, fail, finish} = require("./runner.js");

const [coldgap, top, page] = process.argv.slice(2);
const run = openRunner(top, page);
let numbers = 0, texts = 0, answers = 0, refused = 0;

// What heat and energy do not close to is rounding itself.
const left = /residual$/;
const roundingWords = /closes? to|out minus stored/;

// A largest value is flat: its instant is known to the root of rounding.
const instants = /tightest_time|tightest/;

// A share is the difference of two runs beside the whole.
const shares = /\.alone$/;

// Rings may move so that the last digit decides: what the gas model wants of
// the second ring is then another.  Few may be so, and they are counted.
const seated = text => /seated to/.test(text)
    ? text.replace(/[\d.]+( mm| in| deg| rpm)/g, "$1") : text;
let moved = 0;

function compareNumbers(where, a, b) {
    const part = instants.test(where) ? 1e-6 : 1e-9;
    numbers++;
    const size = shares.test(where) ? 1 : Math.max(Math.abs(a), Math.abs(b));
    if (!(Math.abs(a - b) <= Math.max(1e-12, part * size)))
        fail(where, a, b);
}

function compareTexts(where, a, b) {
    texts++;
    if (a === b)
        return;
    if (seated(String(a)) === seated(String(b)))
        moved++;
    else
        fail(where, JSON.stringify(a), JSON.stringify(b));
}

// Cells go by the names of row and column: rows stand by size, and of those that
// are nothing but rounding any may be first.
function compareTables(where, a, b) {
    const place = row => row.findIndex(cell => typeof cell === "string");
    const sorted = (table, rows) => table.rows
        .map((row, i) => [String(row[Math.max(place(row), 0)]), rows[i]])
        .sort((one, other) => one[0] < other[0] ? -1 : one[0] > other[0])
        .map(pair => pair[1]);
    compare(where, {...a, rows: 0, metric: 0, inch: 0},
            {...b, rows: 0, metric: 0, inch: 0});
    for (const name of ["rows", "metric", "inch"]) {
        const other = sorted(b, b[name]);
        sorted(a, a[name]).forEach((row, i) => row.forEach((cell, k) =>
            compare([where, a.columns[k].key].join("."), cell, other[i][k])));
        if (a[name].length !== b[name].length)
            fail(where, "rows", a[name].length, b[name].length);
    }
}

function compareItems(where, a, b) {
    if (roundingWords.test(a.label || a.text || ""))
        return;
    for (const name of new Set([...Object.keys(a), ...Object.keys(b)]))
        if (!left.test(name))
            compare(where + "." + name, a[name], b[name]);
}

function compare(where, a, b) {
    const things = [a, b].every(x => x !== null && typeof x === "object");
    if (typeof a === "number" && typeof b === "number")
        compareNumbers(where, a, b);
    else if (things && a.is === "table" && b.rows && a.rows && a.rows.length)
        compareTables(where, a, b);
    else if (things)
        compareItems(where, a, b);
    else
        compareTexts(where, a, b);
}

function answer(engine, words) {
    const config = "configs/engines/" + engine + ".cfg";
    const asked = ["find", config, "--json", ...words];
    const own = run(asked), other = shell(coldgap, asked, top);
    const where = engine + " " + words.join(" ");
    if (own.status !== other.status)
        fail(where, "status", own.status, other.status);
    if (own.err !== other.err)
        fail(where, own.err, other.err);
    if (other.status > 1) {
        refused++;
        return;
    }
    answers++;
    compare(where, JSON.parse(own.out), JSON.parse(other.out));
}

for (const engine of namesOf(path.join(top, "configs/engines"))) {
    answer(engine, []);
    if (/^(taught|shop)/.test(engine))
        continue; // evidence takes seconds, and its duties are others' too
    for (const duty of namesOf(path.join(top, "configs/duties")))
        answer(engine, ["--duty", duty]);
}
console.log(answers + " answers, " + refused + " refused alike, " +
            numbers + " numbers, " + texts + " texts, of them " + moved +
            " of rings where the last digit decides");
if (moved > 8)
    fail("too many of them");
if (answers < 100 || refused < 20 || numbers < 20000)
    fail("too little was compared");
finish();
