#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Each gate is shown a tree that keeps the rules and trees that break them, one planted fault at a time."""
import pathlib
import subprocess
import sys
import tempfile
import unittest

HERE = pathlib.Path(__file__).resolve().parent
LICENCE = "// SPDX-License-Identifier: Apache-2.0\n"
CLEAN = {
    "survey-core/units/length.h": LICENCE + "#pragma once\n#include <cmath>\n",
    "survey-core/survey/survey.cpp": LICENCE + '#include "survey/survey.h"\n#include "units/length.h"\n',
    "survey-core/survey/survey.h": LICENCE + "#pragma once\n",
    "survey-core/CMakeLists.txt": "# SPDX-License-Identifier: Apache-2.0\n",
    "sync/outbox/outbox.cpp": LICENCE + '#include "protocol/record.h"\n#include "store/store.h"\n',
    "sync/transport/wire.cpp": LICENCE + '#include <QNetworkReply>\n#include "outbox/outbox.h"\n',
    "app/main.cpp": LICENCE + '#include <QGuiApplication>\n#include "figures/figures.h"\n',
    "qml/screens/Walk.qml": LICENCE + "Item {\n    Text { color: Theme.ink }\n}\n",
    "qml/theme/Theme.qml": LICENCE + 'QtObject {\n    property color ink: "#17242d"\n}\n',
}


class Gate(unittest.TestCase):
    def run_gate(self, gate, planted):
        with tempfile.TemporaryDirectory() as folder:
            for path, text in {**CLEAN, **planted}.items():
                file = pathlib.Path(folder, path)
                file.parent.mkdir(parents=True, exist_ok=True)
                file.write_text(text, encoding="utf-8")
            return subprocess.run([sys.executable, HERE / f"{gate}.py", folder], capture_output=True, text=True,
                                  check=False)

    def passes(self, gate, planted=None):
        ran = self.run_gate(gate, planted or {})
        self.assertEqual(ran.returncode, 0, ran.stdout + ran.stderr)

    def catches(self, gate, path, text, says):
        ran = self.run_gate(gate, {path: text})
        self.assertEqual(ran.returncode, 1, ran.stdout + ran.stderr)
        self.assertRegex(ran.stdout, f"(?m)^{path}:\\d+: .*{says}")


class Boundaries(Gate):
    def test_a_tree_that_keeps_them(self):
        self.passes("boundaries")

    def test_qt_in_the_core(self):
        for header in ("QString", "QtCore/QString", "QtGlobal", "qglobal.h"):
            self.catches("boundaries", "survey-core/units/text.cpp", f"{LICENCE}#include <{header}>\n", "includes Qt")

    def test_qt_in_the_protocol_the_outbox_and_the_workroom(self):
        for folder in ("protocol", "outbox", "workroom"):
            self.catches("boundaries", f"sync/{folder}/a.h", LICENCE + "#include <QObject>\n", "includes Qt")

    def test_qt_in_the_cores_build(self):
        self.catches("boundaries", "survey-core/CMakeLists.txt", "target_link_libraries(a Qt6::Core)\n", "names Qt")

    def test_a_folder_that_includes_a_later_one(self):
        self.catches("boundaries", "survey-core/units/a.cpp", LICENCE + '#include "survey/survey.h"\n', "named after")
        self.catches("boundaries", "survey-core/sizing/a.cpp", LICENCE + '#  include <cloth/widths.h>\n', "named after")
        self.catches("boundaries", "survey-core/store/a.cpp", LICENCE + '#include "protocol/record.h"\n', "named after")
        self.catches("boundaries", "sync/protocol/a.cpp", LICENCE + '#include "outbox/outbox.h"\n', "named after")

    def test_the_app_included_from_below(self):
        planted = {"app/view/thread.h": LICENCE, "sync/transport/b.cpp": LICENCE + '#include "view/thread.h"\n'}
        ran = self.run_gate("boundaries", planted)
        self.assertEqual(ran.returncode, 1)
        self.assertIn("app is named after it", ran.stdout)

    def test_a_way_round_by_climbing(self):
        self.catches("boundaries", "survey-core/units/a.cpp", LICENCE + '#include "../survey/survey.h"\n', "climbs")

    def test_files_and_time_in_the_core(self):
        self.catches("boundaries", "survey-core/cloth/a.cpp", LICENCE + "#include <fstream>\n", "touches files")
        self.passes("boundaries", {"survey-core/store/a.cpp": LICENCE + "#include <filesystem>\n"})
        self.catches("boundaries", "survey-core/figures/a.cpp",
                     LICENCE + "auto t = std::chrono::system_clock::now();\n", "asks for time")

    def test_cpp_among_the_qml(self):
        self.catches("boundaries", "qml/screens/a.cpp", LICENCE, "no C")


def function_of(lines):
    return "int f(int a) {\n" + "    ++a;\n" * lines + "    return a;\n}\n"


class Limits(Gate):
    def test_a_tree_that_keeps_them(self):
        self.passes("limits")

    def test_files_too_long(self):
        for path, limit in (("app/a.h", 400), ("app/a.cpp", 600), ("qml/A.qml", 300)):
            self.passes("limits", {path: "// line\n" * limit})
            self.catches("limits", path, "// line\n" * (limit + 1), f"at most {limit}")

    def test_functions_too_long(self):
        self.passes("limits", {"app/a.cpp": function_of(38)})
        self.catches("limits", "app/a.cpp", function_of(39), "f is 41 lines")

    def test_functions_wherever_they_stand(self):
        long = function_of(39)
        self.catches("limits", "app/a.h", f"namespace a {{\nclass A : public B<int> {{\n{long}}};\n}}\n", "f is 41")
        self.catches("limits", "app/a.cpp", f"namespace {{\n{function_of(3)}{long}}}\n", "f is 41")
        self.catches("limits", "app/a.cpp", long.replace("f(int a)", "A::A(int a) : a_{a}, b_(2)"), "is 41")
        self.catches("limits", "app/a.cpp", long.replace("int f(int a)", "TEST(Cloth, Drops)"), "TEST is 41")
        self.catches("limits", "qml/A.qml", f"Item {{\n{long.replace('int f', 'function f')}}}\n", "f is 41")
        self.catches("limits", "qml/A.qml", f"Item {{\n{long.replace('int f(int a)', 'onClicked:')}}}\n", "onClicked is")

    def test_braces_in_text_are_no_braces(self):
        text = 'int f() {\n    const char* a = "{{{"; /* { */ // {\n    const char b = \'{\';\n    return R"x({)x"[0];\n}\n'
        self.passes("limits", {"app/a.cpp": text + function_of(30)})

    def test_tables_are_no_functions(self):
        self.passes("limits", {"app/a.cpp": "const int table[] = {\n" + "    int(1),\n" * 60 + "};\n"})


class Licences(Gate):
    def test_a_tree_that_keeps_them(self):
        self.passes("licences", {"app/run": "#!/bin/sh\n# SPDX-License-Identifier: Apache-2.0\n", "a.json": "{}\n"})

    def test_a_line_missing(self):
        for path in ("app/a.cpp", "qml/A.qml", "tests/a.py", "tests/CMakeLists.txt", "app/run"):
            self.catches("licences", path, "int a;\n", "is missing")

    def test_a_line_too_late(self):
        self.catches("licences", "app/a.cpp", "\n\n" + LICENCE, "is missing")


class Theme(Gate):
    def test_a_tree_that_keeps_it(self):
        self.passes("theme")

    def test_what_only_the_theme_may_say(self):
        for line in ('color: "#9b2038"', "color: Qt.rgba(0, 0, 0, 1)", 'border.color: "red"', "font.pixelSize: 18",
                     'font.family: "Lato"', "font.italic: true"):
            self.catches("theme", "qml/screens/A.qml", f"{LICENCE}Item {{\n    {line}\n}}\n", "take it from the theme")

    def test_what_moves_by_itself(self):
        for line in ("NumberAnimation { duration: 200 }", "Behavior on x { SmoothedAnimation {} }",
                     "transitions: Transition { }", "add: Transition {", "OpacityAnimator { target: a }"):
            self.catches("theme", "qml/screens/A.qml", f"{LICENCE}Item {{\n    {line}\n}}\n", "moves by itself")

    def test_what_anyone_may_say(self):
        self.passes("theme", {"qml/A.qml": 'Item {\n    color: "transparent"\n    font.pixelSize: Theme.figure\n}\n'})


class Privacy(Gate):
    def test_invented_people(self):
        self.passes("privacy", {"README.md": "keeper@example.org, +44 1632 960123, 01632 960 017, 48 3/8\n"})

    def test_what_mustnt_be_said(self):
        for line, says in (("see /wo" + "rk/main/app", "one machine"), ("cd /ho" + "me/ann/a", "one machine"),
                           ("open(/t" + "mp/store.sqlite)", "one machine"),
                           ("from regis" + "try.example.com", "registry"), ("ann@ma" + "il.net", "mail address"),
                           ("+44 20 7946" + " 0123", "telephone"), ("call 0191 4" + "98 0123", "telephone")):
            self.catches("privacy", "README.md", line + "\n", says)


class Words(Gate):
    SAYS = {"survey-core/sizing/a.cpp": LICENCE + 'auto a() { return say("The {} is {:.1f} m " "wide.", what, wide); }\n'}
    TABLE = "survey-core/words/de.txt"

    def catches_in(self, table, says):
        ran = self.run_gate("words", {**self.SAYS, self.TABLE: table})
        self.assertEqual(ran.returncode, 1, ran.stdout + ran.stderr)
        self.assertIn(says, ran.stdout)

    def test_a_table_that_has_them_all(self):
        self.passes("words", {**self.SAYS, self.TABLE: "# rest\nThe {} is {:.1f} m wide.\n{1:.1f} m breit: {0}\n"})

    def test_what_lacks_words_or_has_other_placeholders(self):
        self.catches_in("# nothing\n", "no words for what survey-core/sizing/a.cpp says: The {} is")
        self.catches_in("The {} is {:.1f} m wide.\n", "no words for: The {} is")
        self.catches_in("The {} is {:.1f} m wide.\n{} m breit: {}\n", "other placeholders")
        self.catches_in("The {} is {:.1f} m wide.\n{1:.1f} m breit\n", "other placeholders")
        self.catches_in("The {} is {:.1f} m wide.\n{1:.1f} m breit: {0}\n\nsill\nBank\n", "nothing says this")

    def test_the_steps_of_a_trace_and_the_words_of_tables(self):
        step = {"survey-core/cloth/a.cpp": LICENCE + 'void a() { t.mm("flat width", w, {"fabric width_mm", "rule a"}); }\n'}
        ran = self.run_gate("words", {**step, self.TABLE: "# nothing\n"})
        self.assertIn("says: flat width", ran.stdout)
        self.assertIn("says: fabric width\n", ran.stdout)
        self.assertNotIn("rule a", ran.stdout)


class ScreenWords(Gate):
    UPDATE = (HERE.parents[1] / "app/words/update").read_text(encoding="utf-8")
    PAGE = LICENCE + 'import QtQuick\nText { text: qsTr("%1 wide") }\n'
    CATALOGUE = ('<?xml version="1.0" encoding="utf-8"?>\n<!DOCTYPE TS>\n<TS version="2.1" language="de">\n'
                 "<context><name>A</name><message><source>%1 wide</source>{}</message></context>\n</TS>\n")

    def planted(self, translation, page=PAGE):
        return {"app/words/update": self.UPDATE, "qml/A.qml": page,
                "app/words/de.ts": self.CATALOGUE.replace("{}", translation)}

    def finds(self, planted, says):
        ran = self.run_gate("screen_words", planted)
        self.assertEqual(ran.returncode, 1, ran.stdout + ran.stderr)
        self.assertIn(says, ran.stdout)

    def test_a_catalogue_that_has_them_all(self):
        self.passes("screen_words", self.planted("<translation>%1 breit</translation>"))

    def test_what_is_unfinished_missing_or_has_other_placeholders(self):
        self.finds(self.planted('<translation type="unfinished"></translation>'), "no words yet for A: %1 wide")
        self.finds(self.planted("<translation>breit</translation>"), "other placeholders")
        more = LICENCE + 'import QtQuick\nText { text: qsTr("new") + qsTr("%1 wide") }\n'
        self.finds(self.planted("<translation>%1 breit</translation>", more), "not taken in yet")
        says = "QString words(const char* source) { return QCoreApplication::translate(\"A\", source); }\n"
        bare = {"app/a.cpp": LICENCE + says + 'auto a = words("a text");\n'}
        self.finds({**self.planted("<translation>%1 breit</translation>"), **bare}, "no catalogue takes")


if __name__ == "__main__":
    unittest.main()
