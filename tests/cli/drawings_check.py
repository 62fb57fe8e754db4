"""What a report's JSON holds with --drawings, against the same without.

   drawings_check.py WITH WITHOUT NAME...

NAMEs are of the drawings, in order.  Prints what does not hold, and nothing
else."""
import json
import re
import sys
import xml.etree.ElementTree as tree

SVG = "{http://www.w3.org/2000/svg}"
NUMBER = re.compile(r"\d")


def text_of(node):
    return "".join(node.itertext())


def check_drawing(item):
    name = item["name"]
    for key in ("title", "words", "svg"):
        if not item.get(key, "").strip():
            yield "%s: no %s" % (name, key)
    try:
        root = tree.fromstring(item["svg"])
    except tree.ParseError as error:
        yield "%s: no XML: %s" % (name, error)
        return
    box = [float(word) for word in root.get("viewBox").split()]
    if root.tag != SVG + "svg" or box[2] != 360.0:
        yield "%s: not 360 units wide" % name
    if not text_of(root.find(SVG + "title")).strip() or \
            not text_of(root.find(SVG + "desc")).strip():
        yield "%s: nothing for those who do not see it" % name
    for node in root.iter():
        for key, value in node.attrib.items():
            if re.search(r"nan|inf", value, re.I):
                yield "%s: %s is %s" % (name, key, value)
    letters = list(root.iter(SVG + "text"))
    seen = " ".join(text_of(node) for node in letters)
    if "not a warranty" not in seen:
        yield "%s: no caution" % name
    if re.search(r"\b(nan|inf)\b", seen, re.I):
        yield "%s: %s" % (name, seen)
    for node in letters:
        if float(node.get("font-size")) < 10.0:
            yield "%s: small letters: %s" % (name, text_of(node))
        x = float(node.get("x"))
        if not box[0] <= x <= box[2] or not 0.0 <= float(node.get("y")) <= box[3]:
            yield "%s: outside: %s" % (name, text_of(node))
    yield from check_largest(name, letters)


def check_largest(name, letters):
    """No figure is larger than what is to be filed to."""
    head = [node for node in letters
            if re.match(r"(Top ring: f|F)ile to [0-9.]+ ", text_of(node))]
    if name.startswith("lesson"):
        return
    if not head and "no gap in range will do" in text_of(letters[1]):
        return
    if not head:
        yield "%s: not what to file to" % name
        return
    size = float(head[0].get("font-size"))
    for node in letters:
        if node is not head[0] and NUMBER.search(text_of(node)) and \
                float(node.get("font-size")) >= size:
            yield "%s: larger than what to file to: %s" % (name, text_of(node))


def without_drawings(items):
    """As a report without them has it: a figure, whose words may be others."""
    return [{"is": "figure", "key": item["name"], "label": item["title"]}
            if item["is"] == "drawing" else item for item in items]


def bare(items, names):
    return [{key: item[key] for key in ("is", "key", "label")}
            if item["is"] == "figure" and item["key"] in names else item
            for item in items]


def main(with_path, without_path, *names):
    answer = json.load(open(with_path, encoding="utf-8"))
    plain = json.load(open(without_path, encoding="utf-8"))
    found = [item for item in answer["first"] + answer["rest"]
             if item["is"] == "drawing"]
    if [item["name"] for item in found] != list(names):
        print("drawings: %s" % [item["name"] for item in found])
    for item in found:
        for trouble in check_drawing(item):
            print(trouble)
    for part in ("cautions", "summary"):
        if answer[part] != plain[part]:
            print("%s is another with drawings" % part)
    for part in ("first", "rest"):
        if without_drawings(answer[part]) != bare(plain[part], names):
            print("%s is another with drawings" % part)
    if "<svg" in open(without_path, encoding="utf-8").read():
        print("drawings without being asked for")


main(*sys.argv[1:])
