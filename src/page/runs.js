// Asks the program, in the worker.  Of each kind of question the newest wins:
// one is under way, at most one waits, and what an older one would have said is
// dropped.

"use strict";

const runs = {worker: null, number: 0, busy: null, waiting: new Map()};

function startWorker(packed, shipped) {
    const code = document.getElementById("worker").textContent;
    const place = URL.createObjectURL(
        new Blob([code], {type: "text/javascript"}));
    runs.worker = new Worker(place);
    runs.worker.onmessage = event => answered(event.data);
    runs.worker.postMessage({packed, shipped});
}

// kind: what a newer question takes the place of; done({status, out, err}).
function ask(kind, words, files, done) {
    runs.waiting.delete(kind);
    runs.waiting.set(kind, {kind, words, files, done});
    next();
}

function next() {
    if (runs.busy !== null || runs.waiting.size === 0)
        return;
    const [kind, question] = runs.waiting.entries().next().value;
    runs.waiting.delete(kind);
    runs.busy = {...question, number: ++runs.number};
    runs.worker.postMessage({number: runs.busy.number, words: question.words,
                             files: question.files});
}

function answered(answer) {
    const question = runs.busy;
    runs.busy = null;
    if (answer.number === question.number && !runs.waiting.has(question.kind))
        question.done(answer);
    next();
}
