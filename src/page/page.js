// The page: fields on one side, what the program says on the other.

"use strict";

const at = id => document.getElementById(id);
const files = JSON.parse(at("files").textContent);
const engines = {};
for (const [name, text] of Object.entries(files)) {
    const found = /^\/configs\/engines\/(\w+)\.cfg$/.exec(name);
    if (found)
        engines[found[1]] = text;
}

const linesOf = text => text.split("\n").filter(line => line !== "");
const own = () => ({[CONFIG]: state.text});

// While a new answer is worked out the old one is seen to be old; where there is
// none it goes, so that no gap stands that nobody has asked for.
function setOld(old, ...places) {
    for (const place of places)
        at(place).classList.toggle("old", old);
}

function working() {
    setOld(true, "answer", "gap");
    at("state").textContent = "Working it out ...";
}

function withdraw(text) {
    setOld(false, "answer", "gap");
    at("figures").replaceChildren();
    at("gap").replaceChildren();
    at("state").textContent = text;
}

// Status 1 is an answer too: not safe as it stands.
function isAnswer(answer) {
    const ok = answer.status <= 1 && answer.out !== "";
    showTrouble(at("fields"), at("trouble"), ok ? [] : linesOf(answer.err));
    return ok;
}

function showAnswer(answer) {
    if (!isAnswer(answer)) {
        withdraw("No answer: see what is marked.");
        return;
    }
    const report = JSON.parse(answer.out);
    const first = report.first.filter(item =>
        item.is === "answer" || item.is === "verdict");
    setOld(false, "answer", "gap");
    at("state").textContent = "";
    document.title = report.title;
    showReport(at("figures"), first.map(item => ({...item, remark: ""})));
    showReport(at("gap"), [
        ...first.filter(item => item.remark)
            .map(item => ({...item, is: "row"})),
        ...report.first.filter(item => !first.includes(item)),
        ...report.rest]);
    at("caution").textContent = report.cautions.slice(0, 2).join(" ");
    at("cautions").replaceChildren(
        ...report.cautions.map(line => make("li", line)));
}

function askAnswer() {
    working();
    ask("answer", ["find", CONFIG, "--json", ...setWords()],
        own(), showAnswer);
}

// What the answer itself has marked stays: it looks at more than the settings.
function showSettings(answer) {
    if (answer.status !== 0) {
        showTrouble(at("fields"), at("trouble"), linesOf(answer.err));
        withdraw("No answer: see what is marked.");
        return;
    }
    const settings = JSON.parse(answer.out);
    showFields(at("fields"), settings, change);
    showMeasured(settings);
}

function askSettings() {
    ask("settings", ["settings", CONFIG, ...setWords()], own(), showSettings);
}

function askLesson() {
    if (at("lesson").hidden)
        return;
    setOld(true, "lesson-answer");
    ask("lesson", ["lesson", CONFIG, "--json", ...setWords()],
        own(), answer => {
            const report = answer.status <= 1 && answer.out !== ""
                ? JSON.parse(answer.out) : null;
            setOld(false, "lesson-answer");
            showReport(at("lesson-answer"), report
                ? [...report.first, ...report.rest] : []);
        });
}

// The sheet's own trouble stands by the sheet.
function askSheet() {
    const rows = state.measured
        .map((row, i) => [i + 1, ...row])
        .filter(row => row.slice(1).some(cell => cell !== ""));
    if (at("sheet").hidden || rows.length === 0) {
        at("sheet-answer").replaceChildren();
        return;
    }
    setOld(true, "sheet-answer");
    const table = ["cylinder,bore_mm,top_gap_mm,second_gap_mm",
                   ...rows.map(row => row.join(","))].join("\n") + "\n";
    ask("sheet", ["sheet", CONFIG, "--json", "--measured", "measured.csv",
                  ...setWords()],
        {...own(), "measured.csv": table}, answer => {
            const ok = answer.status <= 1 && answer.out !== "";
            const report = ok ? JSON.parse(answer.out) : null;
            setOld(false, "sheet-answer");
            at("sheet-trouble").textContent = ok ? "" : answer.err;
            at("sheet-trouble").hidden = ok;
            showReport(at("sheet-answer"), ok
                ? [...report.first, ...report.rest] : []);
        });
}

function askAll() {
    writeAddress();
    askAnswer();
    askSheet();
    askLesson();
}

// A choice may change what else there is to choose.
function change(setting, text) {
    if (text === "" && setting.kind !== "words")
        state.sets.delete(setting.key);
    else
        state.sets.set(setting.key, text);
    askAll();
    if (setting.choices)
        askSettings();
}

function showMeasured(settings) {
    const of = path =>
        settings.find(setting => setting.path === path);
    const cylinders = Math.min(of("engine.cylinders").value, 16);
    const body = at("measured").tBodies[0];
    if (body.rows.length === cylinders)
        return;
    state.measured = Array.from({length: cylinders}, () => ["", "", ""]);
    body.replaceChildren(...state.measured.map((row, i) => {
        const line = make("tr");
        const head = make("th", String(i + 1));
        head.scope = "row";
        line.append(head);
        ["bore", "top gap", "second gap"].forEach((name, k) => {
            const cell = make("td"), input = make("input");
            input.type = "text";
            input.inputMode = "decimal";
            input.setAttribute("aria-label",
                               "Cylinder " + (i + 1) + ", " + name + ", mm");
            input.addEventListener("change", () => {
                row[k] = input.value.trim();
                askSheet();
            });
            cell.append(input);
            line.append(cell);
        });
        return line;
    }));
}

function showEngine() {
    at("from").value = state.engine;
    at("fields").replaceChildren();
    askSettings();
    askAll();
}

function save() {
    ask("keep", ["keep", CONFIG, ...setWords()], own(), answer => {
        if (!isAnswer(answer))
            return;
        const link = make("a");
        link.href = URL.createObjectURL(
            new Blob([answer.out], {type: "text/plain"}));
        link.download = (state.engine || "my_engine") + ".cfg";
        link.click();
        setTimeout(() => URL.revokeObjectURL(link.href), 10000);
    });
}

// A config that cannot be read takes nothing away: what was there stays.
function open(text) {
    ask("open", ["settings", CONFIG], {[CONFIG]: text}, answer => {
        if (!isAnswer(answer))
            return;
        begin("", text);
        showEngine();
    });
}

function openFile(file) {
    if (file)
        file.text().then(open);
}

function choose(tab) {
    for (const other of at("tabs").children) {
        const chosen = other === tab;
        other.setAttribute("aria-selected", String(chosen));
        other.tabIndex = chosen ? 0 : -1;
        at(other.getAttribute("aria-controls")).hidden = !chosen;
    }
    askSheet();
    askLesson();
}

function moveTab(event) {
    const tabs = [...at("tabs").children];
    const step = {ArrowRight: 1, ArrowLeft: -1}[event.key];
    if (!step)
        return;
    const to = tabs[(tabs.indexOf(event.target) + step + tabs.length) %
                    tabs.length];
    to.focus();
    choose(to);
    event.preventDefault();
}

function start() {
    const mine = make("option", "a config of my own");
    mine.value = "";
    mine.disabled = true;
    at("from").append(...Object.keys(engines).sort().map(name => {
        const option = make("option", plain(name));
        option.value = name;
        return option;
    }), mine);
    at("from").addEventListener("change", () => {
        begin(at("from").value, engines[at("from").value]);
        showEngine();
    });
    at("open").addEventListener("change", () => {
        openFile(at("open").files[0]);
        at("open").value = "";
    });
    at("save").addEventListener("click", save);
    at("engine").addEventListener("submit", event => event.preventDefault());
    document.addEventListener("dragover", event => event.preventDefault());
    document.addEventListener("drop", event => {
        event.preventDefault();
        openFile(event.dataTransfer.files[0]);
    });
    for (const tab of at("tabs").children)
        tab.addEventListener("click", () => choose(tab));
    at("tabs").addEventListener("keydown", moveTab);
    startWorker(at("program").textContent, files);
    if (!readAddress(engines))
        begin("boosted_four", engines.boosted_four);
    showEngine();
}

start();
