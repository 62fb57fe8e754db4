// Runs the program away from the finger.  First comes the packed program with
// the shipped files, then requests {number, words, files}; each is answered.

"use strict";

let ready = null; // of the function that runs the program

async function unpack(packed) {
    const letters = atob(packed);
    const bytes = new Uint8Array(letters.length);
    for (let i = 0; i < letters.length; i++)
        bytes[i] = letters.charCodeAt(i);
    const whole = new Blob([bytes]).stream()
        .pipeThrough(new DecompressionStream("gzip"));
    return WebAssembly.compile(await new Response(whole).arrayBuffer());
}

onmessage = async event => {
    const {packed, shipped, number, words, files} = event.data;
    if (packed) {
        ready = unpack(packed).then(module => coldgapRunner(module, shipped));
        return;
    }
    try {
        const run = await ready;
        postMessage({number, ...run(words, files)});
    } catch (trouble) {
        // What the program cannot have foreseen: no memory, most likely.
        postMessage({number, status: 3, out: "",
                     err: "coldgap: the page came to its end: " + trouble});
    }
};
