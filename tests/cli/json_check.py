"""One answer as JSON, screen and page: the same figures, and those of its table.

   json_check.py JSON SCREEN [PAGE [FOLDER]]

Prints what does not hold, and nothing else."""
import glob
import html
import json
import re
import sys

FIGURE = re.compile(r"(?<![A-Za-z_0-9.])\d+(?:\.\d+)?(?:e[-+]?\d+)?")
KINDS = {"section", "part", "answer", "verdict", "note", "say", "row", "table",
         "figure", "step", "blank", "lines"}


def figures(text):
    return set(FIGURE.findall(text))


def words(answer):
    """Run line, title, headings."""
    return [answer["run"], answer["title"]]


def texts(item, system):
    """What a reader sees of an item, its quantities in the system named."""
    seen = [item.get(key, "") for key in ("label", "text", "remark")]
    if "metric" in item and item["is"] != "table":
        seen.append(item[system])
    if item["is"] == "table":
        seen += [column["head"] for column in item["columns"]]
        seen += [cell for row in item[system] for cell in row]
    return seen


def all_of(items, systems):
    return figures("\n".join(
        text for item in items for system in systems
        for text in texts(item, system)))


def check_form(answer):
    for key, kind in (("program", str), ("version", str), ("run", str),
                      ("title", str), ("cautions", list), ("summary", dict),
                      ("first", list), ("rest", list)):
        if not isinstance(answer.get(key), kind):
            yield "no %s" % key
    if len(answer["cautions"]) < 5:
        yield "few cautions"
    if not answer["first"]:
        yield "nothing in the first part"
    for item in answer["first"] + answer["rest"]:
        if item["is"] not in KINDS:
            yield "unknown item: %s" % item["is"]
        if item["is"] in ("answer", "row") and "key" not in item:
            yield "no key: %s" % item
        if item["is"] == "table":
            for system in ("metric", "inch"):
                if [len(row) for row in item[system]] != \
                        [len(row) for row in item["rows"]]:
                    yield "table %s: rows of %s" % (item["key"], system)


def screen_of(path):
    lines = open(path, encoding="utf-8", errors="replace").read().split("\n")
    return figures("\n".join(
        line for line in lines
        if not re.match(r"Computed in|Next:|Pictures:|\d+ points in ", line)))


def page_of(path):
    page = open(path, encoding="utf-8").read()
    page = re.sub(r"(?s)<(svg|style|head)\b.*?</\1>", " ", page)
    page = html.unescape(re.sub(r"<[^>]*>", " ", page))
    return figures(re.sub(r"Figure \d+\.", " ", page))


def check_figures(answer, screen, page):
    items = answer["first"] + answer["rest"]
    always = figures("\n".join(words(answer) + [answer["version"]]))
    shown = [item for item in items if item["is"] != "figure"]
    told = all_of(items, ("metric", "inch")) | always
    steps = sum(item["is"] == "step" for item in items)
    told |= {str(number + 1) for number in range(steps)} # their places
    if len(told) < 5:
        yield "few figures: %s" % sorted(told)
    for figure in screen - told:
        yield "on the screen alone: %s" % figure
    for figure in all_of(shown, ("metric",)) - screen:
        yield "not on the screen: %s" % figure
    if page is None:
        return
    for figure in page - told:
        yield "on the page alone: %s" % figure
    for figure in all_of(shown, ("metric", "inch")) - page:
        yield "not on the page: %s" % figure


def check_summary(answer, folder):
    """Tables of keys in the folder: JSON has them all, and as they are there."""
    for path in glob.glob(folder + "/*.dat"):
        lines = open(path, encoding="utf-8").read().split("\n")
        if "# key value unit" not in lines:
            continue
        rows = [line.split() for line in lines if line and line[0] != "#"]
        if len(rows) < 3:
            yield "%s: few keys" % path
        for key, value, unit in rows:
            own = answer["summary"].get(key)
            if own is None:
                yield "the summary has no %s" % key
            elif own["unit"] != unit or value != (
                    "nan" if own["value"] is None else "%.7g" % own["value"]):
                yield "%s: %s %s in the table, %s in the summary" % (
                    key, value, unit, own)


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        answer = json.load(file)
    broken = list(check_form(answer))
    page = page_of(sys.argv[3]) if len(sys.argv) > 3 and sys.argv[3] else None
    broken += check_figures(answer, screen_of(sys.argv[2]), page)
    if len(sys.argv) > 4 and sys.argv[4]:
        broken += check_summary(answer, sys.argv[4])
    for line in broken:
        print(line)


main()
