// Headless Chromium over the DevTools protocol, by a pipe.  What is waited for
// is a condition, never a time; a condition that does not come ends the test.

"use strict";

const {spawn} = require("child_process");
const fs = require("fs");
const os = require("os");
const path = require("path");

const GIVE_UP = 120e3; // ms, of a condition: the test hangs else

// browser: a function that sends; page: what a test does with one page.
async function openBrowser(more = []) {
    const folder = fs.mkdtempSync(path.join(os.tmpdir(), "coldgap-page-"));
    const child = spawn("chromium", [
        "--headless=new", "--no-sandbox", "--disable-gpu", "--no-first-run",
        "--disable-background-networking", "--disable-dev-shm-usage",
        "--remote-debugging-pipe", "--user-data-dir=" + folder, ...more,
        "about:blank"], {stdio: ["ignore", "ignore", "ignore", "pipe", "pipe"]});
    const waiting = new Map(), listeners = [];
    let number = 0, rest = "";
    child.stdio[4].setEncoding("utf8");
    child.stdio[4].on("data", text => {
        const whole = (rest + text).split("\0");
        rest = whole.pop();
        for (const line of whole) {
            const message = JSON.parse(line);
            const done = waiting.get(message.id);
            waiting.delete(message.id);
            if (done)
                done(message);
            else
                listeners.forEach(listen => listen(message));
        }
    });
    const send = (method, params = {}, sessionId) =>
        new Promise((resolve, reject) => {
            waiting.set(++number, message => message.error
                ? reject(new Error(method + ": " + message.error.message))
                : resolve(message.result));
            child.stdio[3].write(JSON.stringify(
                {id: number, method, params, sessionId}) + "\0");
        });
    const close = () => new Promise(resolve => {
        child.on("exit", () => {
            fs.rmSync(folder, {recursive: true, force: true, maxRetries: 5});
            resolve();
        });
        send("Browser.close").catch(() => child.kill());
    });
    return {send, close, listeners, folder};
}

async function openPage(browser, address, {width = 1280, height = 900,
                                           dark = false} = {}) {
    const {targetId} = await browser.send("Target.createTarget",
                                          {url: "about:blank"});
    const {sessionId} = await browser.send("Target.attachToTarget",
                                           {targetId, flatten: true});
    const send = (method, params) => browser.send(method, params, sessionId);
    const page = {send, said: [], requests: []};
    browser.listeners.push(message => {
        if (message.sessionId !== sessionId)
            return;
        const {method, params} = message;
        if (method === "Runtime.consoleAPICalled")
            page.said.push(params.args.map(arg => arg.value).join(" "));
        else if (method === "Runtime.exceptionThrown")
            page.said.push(params.exceptionDetails.text + " " +
                (params.exceptionDetails.exception || {}).description);
        else if (method === "Log.entryAdded")
            page.said.push(params.entry.text);
        else if (method === "Network.requestWillBeSent")
            page.requests.push(params.request.url);
    });
    await send("Runtime.enable");
    await send("Log.enable");
    await send("Page.enable");
    await send("Network.enable");
    await send("Emulation.setDeviceMetricsOverride",
               {width, height, deviceScaleFactor: 1, mobile: width < 500});
    await send("Emulation.setEmulatedMedia", {features: [{
        name: "prefers-color-scheme", value: dark ? "dark" : "light"}]});
    await send("Page.navigate", {url: address});

    page.eval = async expression => {
        const {result, exceptionDetails} = await send("Runtime.evaluate",
            {expression, returnByValue: true, awaitPromise: true});
        if (exceptionDetails)
            throw new Error(expression + ": " +
                            (exceptionDetails.exception || {}).description);
        return result.value;
    };
    page.until = async (condition, what = condition) => {
        const end = Date.now() + GIVE_UP;
        while (!await page.eval("Boolean(" + condition + ")").catch(() => false))
            if (Date.now() > end)
                throw new Error("waited in vain for: " + what);
            else
                await new Promise(resolve => setTimeout(resolve, 10));
    };
    // Nothing is under way and nothing waits.
    page.rest = () => page.until(
        "document.readyState === 'complete' && runs.busy === null && " +
        "runs.waiting.size === 0", "an answer");
    page.picture = async (file, whole = true) => {
        const {data} = await send("Page.captureScreenshot",
            {format: "png", captureBeyondViewport: whole});
        fs.writeFileSync(file, Buffer.from(data, "base64"));
    };
    page.close = () => browser.send("Target.closeTarget", {targetId});
    return page;
}

module.exports = {openBrowser, openPage};
