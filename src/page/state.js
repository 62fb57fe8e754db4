// What the page is about: a config's text and what has been changed of it.  It
// lives in the address, so that a link holds the engine.

"use strict";

const state = {
    engine: "",        // a shipped one's name, "" for a text of one's own
    text: "",          // the config as it was opened
    sets: new Map(),   // key -> text, as --set takes it
    measured: [],      // of the sheet: [bore, top, second] as typed
};

const CONFIG = "engine.cfg";

function setWords() {
    const words = [];
    for (const [key, value] of state.sets)
        words.push("--set", key + "=" + value);
    return words;
}

function writeAddress() {
    const parts = new URLSearchParams();
    if (state.engine !== "")
        parts.set("engine", state.engine);
    else
        parts.set("config", state.text);
    for (const [key, value] of state.sets)
        parts.append("set", key + "=" + value);
    history.replaceState(null, "", "#" + parts);
}

// False where the address holds no engine that is known.
function readAddress(shipped) {
    const parts = new URLSearchParams(location.hash.slice(1));
    const engine = parts.get("engine"), text = parts.get("config");
    if (engine !== null && Object.hasOwn(shipped, engine))
        begin(engine, shipped[engine]);
    else if (text !== null)
        begin("", text);
    else
        return false;
    for (const set of parts.getAll("set")) {
        const at = set.indexOf("=");
        if (at > 0)
            state.sets.set(set.slice(0, at), set.slice(at + 1));
    }
    return true;
}

function begin(engine, text) {
    state.engine = engine;
    state.text = text;
    state.sets.clear();
    state.measured = [];
}
