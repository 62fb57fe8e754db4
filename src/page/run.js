// Runs the program once: its own commands, with words and files, as a shell
// would.  What the program wants of a system is the small part of WASI preview 1
// below, over files in memory; each run is an instance of its own, so that none
// leaves anything behind.
//
//   const run = coldgapRunner(module, {"/configs/duties/settled.cfg": bytes});
//   run(["find", "my.cfg", "--json"], {"my.cfg": text})
//       -> {status, out, err}
//
// A run's own files stand in HOME, where the shipped engines do, so that a config
// finds beside it what it finds there.

"use strict";

function coldgapRunner(module, shipped) {
    const SUCCESS = 0, BAD_FILE = 8, NOT_THERE = 44, NOT_HERE = 52;
    const FOLDER = 3, PLAIN = 4, SCREEN = 2;
    const HOME = "/configs/engines/";
    const encoder = new TextEncoder();
    const decoder = new TextDecoder();
    const environment = ["COLDGAP_CONFIGS=/configs"];

    // "a/./b/../c" -> "/a/c".
    function place(name) {
        const parts = [];
        for (const part of name.split("/"))
            if (part === "..")
                parts.pop();
            else if (part !== "" && part !== ".")
                parts.push(part);
        return "/" + parts.join("/");
    }

    // Name -> {bytes} or {names}, a folder's; each with a number of its own.
    function tree(files) {
        const all = new Map([["/", {names: [], number: 1}]]);
        for (const [name, bytes] of files) {
            const parts = place(name).split("/").slice(1);
            for (let i = 0; i < parts.length; i++) {
                const path = "/" + parts.slice(0, i + 1).join("/");
                const above = all.get("/" + parts.slice(0, i).join("/"));
                if (all.has(path))
                    continue;
                above.names.push(parts[i]);
                all.set(path, {number: all.size + 1, names: []});
            }
            const entry = all.get(place(name));
            delete entry.names;
            entry.bytes = bytes;
        }
        return all;
    }

    const bytesOf = data =>
        typeof data === "string" ? encoder.encode(data) : data;

    return function run(words, own = {}) {
        const files = tree([
            ...Object.entries(shipped),
            ...Object.entries(own).map(([name, data]) => [HOME + name, data]),
        ].map(([name, data]) => [name, bytesOf(data)]));
        // The program knows one folder, "/"; what is not in it is looked for
        // from HOME.
        const find = name =>
            [place(name), place(HOME + name)].find(path => files.has(path));
        const screens = [null, [], []]; // of stdout and stderr
        const open = new Map([[3, {entry: files.get("/"), path: "/"}]]);
        let memory, next = 4;

        const view = () => new DataView(memory.buffer);
        const at = (start, length) =>
            new Uint8Array(memory.buffer, start, length);
        const text = (start, length) => decoder.decode(at(start, length));

        // Words as C has them: places in a list, letters behind each other.
        function putWords(list, places, letters) {
            for (const word of list) {
                const bytes = encoder.encode(word + "\0");
                view().setUint32(places, letters, true);
                at(letters, bytes.length).set(bytes);
                places += 4;
                letters += bytes.length;
            }
            return SUCCESS;
        }

        function putSizes(list, count, length) {
            view().setUint32(count, list.length, true);
            view().setUint32(length, list.reduce((sum, word) =>
                sum + encoder.encode(word).length + 1, 0), true);
            return SUCCESS;
        }

        function putAbout(entry, to) {
            const out = view();
            at(to, 64).fill(0);
            out.setBigUint64(to, 1n, true);
            out.setBigUint64(to + 8, BigInt(entry.number), true);
            out.setUint8(to + 16, entry.names ? FOLDER : PLAIN);
            out.setBigUint64(to + 24, 1n, true);
            out.setBigUint64(to + 32,
                BigInt(entry.bytes ? entry.bytes.length : 0), true);
            return SUCCESS;
        }

        // Each piece of a read or write: where it is and how long.
        function* pieces(list, count) {
            for (let i = 0; i < count; i++)
                yield [view().getUint32(list + 8 * i, true),
                       view().getUint32(list + 8 * i + 4, true)];
        }

        const asked = {
            args_get: (places, letters) =>
                putWords(["coldgap", ...words], places, letters),
            args_sizes_get: (count, length) =>
                putSizes(["coldgap", ...words], count, length),
            environ_get: (places, letters) =>
                putWords(environment, places, letters),
            environ_sizes_get: (count, length) =>
                putSizes(environment, count, length),
            clock_time_get(which, precision, to) {
                const now = BigInt(Math.round(performance.now() * 1e6));
                view().setBigUint64(to, now, true);
                return SUCCESS;
            },
            proc_exit(status) {
                throw {exit: status};
            },
            fd_prestat_get(fd, to) {
                if (fd !== 3)
                    return BAD_FILE;
                view().setUint32(to, 0, true);
                view().setUint32(to + 4, 1, true);
                return SUCCESS;
            },
            fd_prestat_dir_name(fd, to) {
                at(to, 1)[0] = "/".charCodeAt(0);
                return SUCCESS;
            },
            fd_fdstat_get(fd, to) {
                const file = open.get(fd);
                if (!file && fd > 2)
                    return BAD_FILE;
                at(to, 24).fill(0);
                view().setUint8(to, !file ? SCREEN
                    : file.entry.names ? FOLDER : PLAIN);
                view().setBigUint64(to + 8, ~0n, true); // all rights
                view().setBigUint64(to + 16, ~0n, true);
                return SUCCESS;
            },
            fd_filestat_get(fd, to) {
                const file = open.get(fd);
                return file ? putAbout(file.entry, to) : BAD_FILE;
            },
            path_filestat_get(fd, flags, name, length, to) {
                const entry = files.get(find(text(name, length)));
                return entry ? putAbout(entry, to) : NOT_THERE;
            },
            path_open(fd, links, name, length, how, rights, more, flags, to) {
                const path = find(text(name, length));
                const entry = files.get(path);
                if (!entry)
                    return how & 1 ? NOT_HERE : NOT_THERE; // nothing is made
                open.set(next, {entry, path, seen: 0});
                view().setUint32(to, next++, true);
                return SUCCESS;
            },
            fd_close: fd => open.delete(fd) || fd < 3 ? SUCCESS : BAD_FILE,
            fd_read(fd, list, count, got) {
                const file = open.get(fd);
                let sum = 0;
                if (!file || !file.entry.bytes)
                    return BAD_FILE;
                for (const [start, length] of pieces(list, count)) {
                    const part = file.entry.bytes
                        .subarray(file.seen, file.seen + length);
                    at(start, part.length).set(part);
                    file.seen += part.length;
                    sum += part.length;
                }
                view().setUint32(got, sum, true);
                return SUCCESS;
            },
            fd_write(fd, list, count, put) {
                let sum = 0;
                if (!screens[fd])
                    return BAD_FILE;
                for (const [start, length] of pieces(list, count)) {
                    screens[fd].push(at(start, length).slice());
                    sum += length;
                }
                view().setUint32(put, sum, true);
                return SUCCESS;
            },
            fd_seek(fd, offset, from, to) {
                const file = open.get(fd);
                if (!file || !file.entry.bytes)
                    return fd < 3 ? 70 : BAD_FILE; // a screen is no file
                const start = [0, file.seen, file.entry.bytes.length][from];
                file.seen = start + Number(offset);
                view().setBigUint64(to, BigInt(file.seen), true);
                return SUCCESS;
            },
            fd_readdir(fd, to, room, cookie, used) {
                const {entry, path} = open.get(fd);
                const start = to, end = to + room;
                for (let i = Number(cookie); i < entry.names.length; i++) {
                    const name = encoder.encode(entry.names[i]);
                    const about = new Uint8Array(24 + name.length);
                    const head = new DataView(about.buffer);
                    const child = files.get(place(path + "/" +
                                                  entry.names[i]));
                    head.setBigUint64(0, BigInt(i + 1), true);
                    head.setBigUint64(8, BigInt(child.number), true);
                    head.setUint32(16, name.length, true);
                    head.setUint8(20, child.names ? FOLDER : PLAIN);
                    about.set(name, 24);
                    const part = about.subarray(0, end - to);
                    at(to, part.length).set(part);
                    to += part.length;
                }
                view().setUint32(used, to - start, true);
                return SUCCESS;
            },
        };
        // The rest is not had, and said so: no program here relies on it.
        const system = {};
        for (const {name, module: of} of WebAssembly.Module.imports(module))
            if (of === "wasi_snapshot_preview1")
                system[name] = asked[name] || (() => NOT_HERE);

        const instance = new WebAssembly.Instance(
            module, {wasi_snapshot_preview1: system});
        memory = instance.exports.memory;
        let status = 0;
        try {
            instance.exports._start();
        } catch (ended) {
            if (ended.exit === undefined)
                throw ended;
            status = ended.exit;
        }
        const shown = screen => {
            const whole = new TextDecoder();
            return screen.map(part => whole.decode(part, {stream: true}))
                .join("") + whole.decode();
        };
        return {status, out: shown(screens[1]), err: shown(screens[2]),
                memory: memory.buffer.byteLength};
    };
}
