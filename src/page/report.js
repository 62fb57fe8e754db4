// The program's report, item by item, as elements.  Every text is the
// program's, and none becomes markup; a drawing is shown as a picture.

"use strict";

function make(name, text, className) {
    const element = document.createElement(name);
    if (text !== undefined && text !== null)
        element.textContent = text;
    if (className)
        element.className = className;
    return element;
}

function quantity(item) {
    if (item.text !== undefined && item.metric === undefined)
        return item.text;
    return item.inch && item.inch !== item.metric
        ? item.metric + " (" + item.inch + ")" : item.metric;
}

function answerOf(item) {
    const box = make("div", null, "answer");
    box.append(make("span", item.label), " ");
    const figure = make("strong", item.metric);
    box.append(figure, " ", make("span", "(" + item.inch + ")"));
    if (item.remark)
        box.append(make("small", item.remark));
    return box;
}

function rowsOf(items) {
    const list = make("dl");
    for (const item of items) {
        const value = make("dd", quantity(item));
        if (item.remark)
            value.append(make("small", item.remark));
        list.append(make("dt", item.label), value);
    }
    return list;
}

function tableOf(item) {
    const box = make("div", null, "table");
    const table = make("table");
    const head = make("tr");
    box.tabIndex = 0;
    box.setAttribute("role", "group");
    box.setAttribute("aria-label", item.text || "Table");
    if (item.text)
        table.append(make("caption", item.text));
    for (const column of item.columns)
        head.append(make("th", column.head));
    head.querySelectorAll("th").forEach(cell => cell.scope = "col");
    table.append(make("thead"));
    table.tHead.append(head);
    const body = make("tbody");
    item.metric.forEach((row, i) => {
        const line = make("tr");
        row.forEach((cell, k) => {
            const shown = make(k === 0 ? "th" : "td", cell);
            if (k === 0)
                shown.scope = "row";
            if (item.inch[i][k] !== cell)
                shown.title = item.inch[i][k];
            line.append(shown);
        });
        body.append(line);
    });
    table.append(body);
    box.append(table);
    return box;
}

function figureOf(item) {
    if (!item.svg)
        return null;
    const figure = make("figure");
    const picture = make("img");
    picture.alt = item.text;
    picture.src = "data:image/svg+xml," + encodeURIComponent(item.svg);
    figure.append(picture, make("figcaption", item.label));
    return figure;
}

const makers = {
    section: item => make("h2", item.text),
    part: item => make("h3", item.text),
    answer: answerOf,
    verdict: item => make("p", item.text,
                          "verdict " + (item.good ? "good" : "bad")),
    note: item => make("p", "Note: " + item.text, "note"),
    say: item => make("p", item.text),
    table: tableOf,
    figure: figureOf,
    lines: item => make("pre", item.text),
    blank: item => make("p", item.label + ": ____________"),
};

function showReport(place, items) {
    const parts = [];
    for (let i = 0; i < items.length; i++) {
        const from = i;
        while (i < items.length && items[i].is === items[from].is &&
               (items[i].is === "row" || items[i].is === "step"))
            i++;
        if (i > from) {
            const some = items.slice(from, i--);
            if (items[from].is === "row") {
                parts.push(rowsOf(some));
            } else {
                const list = make("ol");
                list.append(...some.map(item => make("li", item.text)));
                parts.push(list);
            }
            continue;
        }
        const part = makers[items[i].is](items[i]);
        if (part)
            parts.push(part);
    }
    place.replaceChildren(...parts);
}
