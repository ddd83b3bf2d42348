#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""describe.py man|completion WORKROOM: what the program says of itself with --help, as its manual page (man(7)) or as
completion for bash. Made when it is packaged, so that neither says anything that the program doesn't."""
import re
import subprocess
import sys

OPTION = re.compile(r"^  (?P<names>-{1,2}[\w-]+(?:,--[\w-]+)*)(?P<rest>.*)$")
KIND = re.compile(r"^ ?(?P<kind>(?:TEXT|UINT|INT|FLOAT)\S*(?: in \[[^]]*\]\S*)?(?: REQUIRED)?(?: \.\.\.)?)?(?:\s{2,}(?P<says>.*))?$")
CHOICES = re.compile(r"\{([^}]*)\}")


def help_of(workroom, *words):
    return subprocess.run([workroom, *words, "--help"], check=True, capture_output=True, text=True).stdout


def commands_of(workroom):
    """Name and description of each command, in the program's order."""
    lines = help_of(workroom).split("Subcommands:\n")[1].splitlines()
    found = []
    for line in lines:
        begins = re.match(r"^  (\w+)\s+(.*)$", line)
        if begins:
            found.append([begins.group(1), begins.group(2)])
        elif line.strip():
            found[-1][1] += " " + line.strip()
    return found


def options_of(text):
    """Names, kind of value and description of each option and positional of a command."""
    found = []
    for line in text.splitlines():
        option = OPTION.match(line)
        if option:
            rest = KIND.match(option.group("rest"))
            kind, says = (rest.group("kind") or "", rest.group("says") or "") if rest else ("", option.group("rest"))
            found.append([option.group("names").split(","), kind, says])
        elif found and line.startswith(" " * 20):
            found[-1][2] = (found[-1][2] + " " + line.strip()).strip()
        elif not line.startswith("  "):
            found.append([[], "", ""])  # what follows belongs to no option
    return [option for option in found if option[0]]


def usage_of(text):
    return re.search(r"^Usage: truehang-workroom (.*)$", text, re.M).group(1)


def roff(text):
    """Text as roff takes it: a backslash, a leading dot and a hyphen mean what they show."""
    return "\n".join(("\\&" if line[:1] in ".'" else "") + line.replace("\\", "\\e").replace("-", "\\-")
                     for line in text.splitlines())


def sentence(text):
    return text if text.endswith(".") else text + "."


def value_word(kind):
    choices = CHOICES.search(kind)
    if choices:
        return choices.group(1).replace(",", " | ")
    return {"TEXT": "text", "UINT": "number", "INT": "number", "FLOAT": "number"}.get(re.match(r"\w*", kind).group(0), "")


def man(workroom):
    says = help_of(workroom).splitlines()[0]
    out = ['.\\" SPDX-License-Identifier: Apache-2.0', ".TH TRUEHANG\\-WORKROOM 1", ".SH NAME",
           roff("truehang-workroom") + " \\- " + roff("receives surveys, works out figures, prints sheets"),
           ".SH SYNOPSIS", ".B truehang\\-workroom", ".I command", "[options]", ".SH DESCRIPTION", roff(says),
           ".SH COMMANDS"]
    for name, about in commands_of(workroom):
        text = help_of(workroom, name)
        out += [".SS " + roff(usage_of(text)), roff(sentence(about))]
        for names, kind, about_option in options_of(text):
            if "--help" in names:
                continue
            word = value_word(kind)
            out += [".TP", "\\fB" + roff(", ".join(names)) + "\\fR" + (" \\fI" + roff(word) + "\\fR" if word else ""),
                    roff(sentence(about_option)) + (" Has to be given." if "REQUIRED" in kind else "")]
    out += [".SH EXIT STATUS", "0 where it is done, 1 where it is done and faults were found, 2 where it was refused and "
            "nothing was changed."]
    return "\n".join(out) + "\n"


def completion(workroom):
    commands = commands_of(workroom)
    cases = []
    for name, _ in commands:
        options = options_of(help_of(workroom, name))
        for names, kind, _ in options:
            choices = CHOICES.search(kind)
            if choices:
                cases.append(f'        {name}:{"|".join(f"{name}:{each}" for each in names).split(":", 1)[1]}) '
                             f'words="{choices.group(1).replace(",", " ")}" ;;')
        words = " ".join(each for names, _, _ in options for each in names if each.startswith("--"))
        cases.append(f'        {name}:*) words="{words}" ;;')
    listed = " ".join(name for name, _ in commands)
    body = "\n".join(cases)
    return f"""# SPDX-License-Identifier: Apache-2.0
_truehang_workroom() {{
    local now="${{COMP_WORDS[COMP_CWORD]}}" before="${{COMP_WORDS[COMP_CWORD-1]}}" words="{listed}"
    if [ "$COMP_CWORD" -gt 1 ]; then
        case "${{COMP_WORDS[1]}}:$before" in
{body}
        *) words="" ;;
        esac
    fi
    mapfile -t COMPREPLY < <(compgen -W "$words" -- "$now")
    if [ ${{#COMPREPLY[@]}} -eq 0 ]; then
        compopt -o default
    fi
}}
complete -F _truehang_workroom truehang-workroom
"""


if __name__ == "__main__":
    print({"man": man, "completion": completion}[sys.argv[1]](sys.argv[2]), end="")
