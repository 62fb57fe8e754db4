// The fields: of what a builder knows, a slider with its number or a choice,
// each made of the program's own table of settings.

"use strict";

const shown = [
    ["Boost and fuel", "charge.boost fuel.name fuel.lambda fuel.octane " +
        "combustion.injection charge.cooler_effectiveness charge.ambient " +
        "nitrous.flow spray.flow"],
    ["Engine", "engine.bore engine.stroke engine.compression_ratio " +
        "engine.cylinders engine.speed"],
    ["Your gaps", "rings.top.cold_gap rings.second.cold_gap"],
    ["Rings", "rings.top.material rings.top.face rings.top.width " +
        "rings.second.material"],
    ["Piston and bore", "piston.alloy piston.oil_jet piston.gallery " +
        "bore.material bore.seat bore.block_material"],
    ["Cooling", "cooling.coolant cooling.air_speed cooling.oil"],
    ["Duty", "duty.name margin.duties margin.risk"],
];

// What an engine has only where its config brings it.
const brought = ["nitrous.flow", "spray.flow"];
const isThere = setting =>
    setting && !(brought.includes(setting.path) && setting.value === 0);

// Half and half as much again is what one tries; a number of one's own may be
// anywhere in the band.
function sliderOf(setting) {
    const slider = make("input");
    const value = setting.value;
    const span = setting.path === "charge.boost"
        ? [0, Math.max(2 * value, 200)]
        : [value - 0.5 * Math.abs(value), value + 0.5 * Math.abs(value)];
    const low = Math.max(span[0], setting.low);
    const high = Math.min(span[1], setting.high);
    const step = setting.kind === "count" ? 1
        : Math.pow(10, Math.floor(Math.log10((high - low) / 50)));
    slider.type = "range";
    slider.min = String(Math.ceil(low / step) * step);
    slider.max = String(high);
    slider.step = String(step);
    slider.value = String(value);
    slider.decimals = Math.max(0, -Math.round(Math.log10(step)));
    return slider;
}

const unitOf = setting =>
    setting.unit === "pct" ? "%" : setting.unit.replace("_", "/");

const plain = name => name.replaceAll("_", " ");

function choiceOf(setting) {
    const choice = make("select");
    for (const name of [...new Set(setting.choices)].sort()) {
        const option = make("option", plain(name));
        option.value = name;
        choice.append(option);
    }
    choice.value = setting.value;
    return choice;
}

function fieldOf(setting, changed) {
    const box = make("div", null, "field");
    const id = setting.path;
    const label = make("label", setting.about);
    const trouble = make("p", null, "trouble");
    const put = text => changed(setting, text);
    let input;
    box.dataset.path = setting.path;
    box.dataset.key = setting.key;
    label.htmlFor = id;
    if (setting.unit)
        label.append(make("span", " " + unitOf(setting), "unit"));
    box.append(label);
    if (setting.kind === "switch") {
        input = make("input");
        input.type = "checkbox";
        input.checked = setting.value;
        input.addEventListener("change", () => put(String(input.checked)));
    } else if (setting.choices) {
        input = choiceOf(setting);
        input.addEventListener("change", () => put(input.value));
    } else {
        input = make("input");
        input.type = "text";
        input.value = setting.kind === "words" ? setting.value : setting.text;
        if (setting.kind !== "words")
            input.inputMode = "decimal";
        input.addEventListener("change", () => put(input.value.trim()));
        if (setting.value !== null && setting.kind !== "words" &&
            setting.value !== 0 || setting.path === "charge.boost") {
            const slider = sliderOf(setting);
            slider.setAttribute("aria-label", setting.about);
            slider.addEventListener("input", () => {
                input.value = Number(slider.value).toFixed(slider.decimals);
                put(input.value);
            });
            input.addEventListener("change",
                                   () => slider.value = input.value);
            box.append(slider);
        }
    }
    input.id = id;
    trouble.id = id + "-trouble";
    trouble.setAttribute("role", "alert");
    trouble.hidden = true;
    input.setAttribute("aria-describedby", trouble.id);
    box.append(input, trouble);
    return box;
}

// What was typed and is wrong stays in its field.
function showFields(place, settings, changed) {
    const known = new Map(settings.map(setting => [setting.path, setting]));
    const groups = [];
    for (const [title, paths] of shown) {
        const group = make("fieldset");
        group.append(make("legend", title));
        for (const path of paths.split(" "))
            if (isThere(known.get(path)))
                group.append(fieldOf(known.get(path), changed));
        if (group.children.length > 1)
            groups.push(group);
    }
    place.replaceChildren(...groups);
}

// The program's lines, each beside the field it names; the rest in `place`.
function showTrouble(fields, place, lines) {
    const rest = [];
    for (const old of fields.querySelectorAll(".trouble"))
        old.hidden = true;
    for (const input of fields.querySelectorAll("[aria-invalid]"))
        input.removeAttribute("aria-invalid");
    for (const line of lines) {
        const field = [...fields.querySelectorAll(".field")].find(box =>
            line.includes(" " + box.dataset.key + ":") ||
            line.includes(" " + box.dataset.path + ":"));
        const trouble = field && field.querySelector(".trouble");
        if (!trouble) {
            rest.push(line);
            continue;
        }
        trouble.textContent = trouble.hidden
            ? line : trouble.textContent + "\n" + line;
        trouble.hidden = false;
        document.getElementById(field.dataset.path)
            .setAttribute("aria-invalid", "true");
    }
    place.textContent = rest.join("\n");
    place.hidden = rest.length === 0;
}
