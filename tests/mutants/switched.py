"""Puts every mutant that cargo-mutants lists behind a switch, so that one build holds them all.

    switched.py LIST TREE

LIST is the JSON of `cargo mutants --list --json`, TREE a copy of the workspace, which is changed. The mutant
whose number, its place in LIST, stands in the environment's MUTANT is the one at work. Without that, the
tests do what they did before. Mutants that do not compile are found and left out. Writes build.json beside
TREE: the test binaries, what does not compile, and what cannot be switched this way.
"""

import json
import os
import pathlib
import re
import subprocess
import sys

import tree_sitter
import tree_sitter_rust

ROOT = "crates/cupwright/src/lib.rs"

SWITCH = """
#[doc(hidden)]
#[allow(missing_docs)]
pub mod mutant {
    extern crate std;
    use core::sync::atomic::{AtomicBool, AtomicU32, Ordering::Relaxed};
    const UNKNOWN: u32 = u32::MAX;
    const NONE: u32 = u32::MAX - 1;
    const RECORDED: u32 = u32::MAX - 2;
    static ACTIVE: AtomicU32 = AtomicU32::new(UNKNOWN);
    static SEEN: [AtomicBool; COUNT] = [const { AtomicBool::new(false) }; COUNT];
    pub const fn on(number: u32) -> bool {
        core::intrinsics::const_eval_select((number,), never, at_run_time)
    }
    const fn never(_: u32) -> bool {
        false
    }
    fn at_run_time(number: u32) -> bool {
        let active = ACTIVE.load(Relaxed);
        active == number || (active >= RECORDED && special(number, active))
    }
    #[cold]
    fn special(number: u32, active: u32) -> bool {
        if active == UNKNOWN {
            let told = std::env::var("MUTANT").ok();
            let recorded = std::env::var("MUTANTS_SEEN").is_ok();
            let known = told.map_or(if recorded { RECORDED } else { NONE }, |n| n.parse().unwrap());
            ACTIVE.store(known, Relaxed);
            return at_run_time(number);
        }
        if active == RECORDED && !SEEN[number as usize].swap(true, Relaxed) {
            use std::io::Write;
            let path = std::env::var("MUTANTS_SEEN").unwrap();
            let file = std::fs::OpenOptions::new().append(true).create(true).open(path);
            file.unwrap().write_all(std::format!("{number}\\n").as_bytes()).unwrap();
        }
        false
    }
}
"""


class Source:
    """One file with its mutants."""

    def __init__(self, text):
        self.text = text.encode()
        self.lines = [0]
        for line in text.split("\n"):
            self.lines.append(self.lines[-1] + len(line.encode()) + 1)
        self.rows = text.split("\n")
        parser = tree_sitter.Parser(tree_sitter.Language(tree_sitter_rust.language()))
        self.root = parser.parse(self.text).root_node
        self.at = {}

    def byte(self, place):
        row = place["line"] - 1
        return self.lines[row] + len(self.rows[row][: place["column"] - 1].encode())

    def add(self, number, mutant):
        """Ties a mutant to its node; false where there is no way to switch it."""
        start, end = self.byte(mutant["span"]["start"]), self.byte(mutant["span"]["end"])
        node = self.root.descendant_for_byte_range(start, end)
        genre = mutant["genre"]
        if not mutant["function"]:
            # A constant: the compiler has its value.
            return False
        if genre == "StructField":
            # With its comma.
            node = self.root.descendant_for_byte_range(start, start + 1)
        if genre == "FnValue":
            while node.type != "function_item":
                node = node.parent
            returned = node.child_by_field_name("return_type")
            if returned and b"impl " in returned.text:
                return False
        elif genre in ("BinaryOperator", "UnaryOperator"):
            kinds = {"BinaryOperator": ("binary_expression", "compound_assignment_expr"),
                     "UnaryOperator": ("unary_expression",)}[genre]
            while node.type not in kinds or node.start_byte > start:
                node = node.parent
            if b"let " in node.text and has_let(node):
                return False
        elif genre == "MatchArmGuard":
            while node.type != "match_pattern":
                node = node.parent
            if has_let(node.child_by_field_name("condition")):
                return False
        elif genre == "MatchArm":
            while node.type != "match_arm":
                node = node.parent
            node = node.child_by_field_name("pattern")
            condition = node.child_by_field_name("condition")
            if condition and has_let(condition):
                return False
        else:
            while node.type not in ("field_initializer", "shorthand_field_initializer"):
                node = node.parent
        self.at.setdefault(node.id, []).append((number, mutant))
        return True

    def plain(self, node):
        """A node's text with its children's mutants."""
        out, place = [], node.start_byte
        for child in node.children:
            out.append(self.text[place:child.start_byte].decode())
            out.append(self.emit(child))
            place = child.end_byte
        out.append(self.text[place:node.end_byte].decode())
        return "".join(out)

    def emit(self, node):
        mutants = self.at.get(node.id)
        if not mutants:
            return self.plain(node) if node.child_count else node.text.decode()
        kind = node.type
        field = node.child_by_field_name
        if kind == "function_item":
            text = self.plain_until_body(node)
            early = "".join(f"if {on(n)} {{ return {m['replacement']}; }} " for n, m in mutants)
            body = self.plain(field("body"))
            return text + "{ " + early + body[1:]
        if kind == "binary_expression":
            left, right = self.emit(field("left")), self.emit(field("right"))
            operator = field("operator").text.decode()
            if operator in ("&&", "||"):
                (number, _), = mutants
                same = "!=" if operator == "&&" else "=="
                return f"(match {left} {{ l => if l {same} {on(number)} {{ {right} }} else {{ l }} }})"
            if operator in ("==", "!=", "<", "<=", ">", ">="):
                return chosen(f"match (&({left}), &({right}))", "(l, r)", "*l", operator, "*r", mutants)
            return chosen(f"match ({left}, {right})", "(l, r)", "l", operator, "r", mutants)
        if kind == "compound_assignment_expr":
            left, right = self.emit(field("left")), self.emit(field("right"))
            operator = field("operator").text.decode()
            return chosen(f"match {right}", "r", left, operator, "r", mutants)
        if kind == "unary_expression":
            operator = node.children[0].text.decode()
            (number, _), = mutants
            return (f"(match {self.emit(node.children[1])} {{ x => "
                    f"if {on(number)} {{ x }} else {{ {operator}x }} }})")
        if kind == "match_pattern":
            condition = field("condition")
            place = condition.start_byte if condition else node.end_byte
            text = "".join(
                self.text[a:b].decode() for a, b in [(node.start_byte, place)]
            )
            guard = f"({self.emit(condition)})" if condition else "true"
            for number, mutant in mutants:
                if mutant["genre"] == "MatchArmGuard":
                    guard = (f"({on(number)} || {guard})" if mutant["replacement"] == "true"
                             else f"(!{on(number)} && {guard})")
            for number, mutant in mutants:
                if mutant["genre"] == "MatchArm":
                    guard = f"(!{on(number)} && {guard})"
            return text + ("" if condition else " if ") + guard
        if kind in ("field_initializer", "shorthand_field_initializer"):
            (number, _), = mutants
            base = next(c for c in node.parent.children if c.type == "base_field_initializer")
            base = base.text.decode().removeprefix("..")
            if kind == "field_initializer":
                name, value = field("field").text.decode(), self.emit(field("value"))
            else:
                name = value = node.text.decode()
            return f"{name}: if {on(number)} {{ ({base}).{name} }} else {{ {value} }}"
        raise ValueError(kind)

    def plain_until_body(self, node):
        return self.text[node.start_byte:node.child_by_field_name("body").start_byte].decode()


def has_let(node):
    return node.type in ("let_condition", "let_chain") or any(
        has_let(c) for c in node.children if c.type not in ("block", "closure_expression"))


def on(number):
    return f"crate::mutant::on({number}u32)"


def chosen(matched, pattern, left, operator, right, mutants):
    ways = "".join(f"if {on(n)} {{ {left} {m['replacement']} {right} }} else " for n, m in mutants)
    return f"({matched} {{ {pattern} => {ways}{{ {left} {operator} {right} }} }})"


def write(tree, originals, mutants, left_out):
    """Writes the sources with every mutant but those left out, and gives back what has no switch."""
    files, no_way = {name: Source(text) for name, text in originals.items()}, set()
    for number, mutant in enumerate(mutants):
        if number not in left_out and not files[mutant["file"]].add(number, mutant):
            no_way.add(number)
    for name, source in files.items():
        text = source.emit(source.root)
        if name == ROOT:
            features = "#![feature(core_intrinsics, const_eval_select)]\n"
            text = features + "#![allow(internal_features, warnings)]\n" + text
            text += SWITCH.replace("COUNT", str(len(mutants)))
        (tree / name).write_text(text)
    return no_way


def blamed(tree, mutants):
    """The mutants that the compiler does not take; none where it takes all."""
    told = cargo(tree, "check", "--package", "cupwright", "--lib", "--all-features")
    numbers = set()
    for message in told:
        if message.get("reason") != "compiler-message" or message["message"]["level"] != "error":
            continue
        error = message["message"]
        if not error["spans"]:
            continue
        span = next(s for s in error["spans"] if s["is_primary"])
        while span.get("expansion"):
            span = span["expansion"]["span"]
        row = (tree / span["file_name"]).read_text().split("\n")[span["line_start"] - 1]
        before = re.findall(r"mutant::on\((\d+)u32\)", row[: span["column_start"] - 1])
        if before:
            numbers.add(int(before[-1]))
        else:
            # A match without an arm: lines are where they were.
            within = lambda m: (m["file"] == span["file_name"] and m["genre"] == "MatchArm"
                                and m["function"]["span"]["start"]["line"] <= span["line_start"]
                                <= m["function"]["span"]["end"]["line"])
            arms = {n for n, m in enumerate(mutants) if within(m)}
            if not arms:
                sys.exit(error["rendered"])
            numbers |= arms
    return numbers


def cargo(tree, command, *arguments):
    wrapper = tree.parent / "nightly_features"
    wrapper.write_text('#!/bin/sh\nexec env RUSTC_BOOTSTRAP=1 "$@"\n')
    wrapper.chmod(0o755)
    # Only for our own packages, so that the others need not be compiled anew.
    env = {**os.environ, "RUSTC_WORKSPACE_WRAPPER": str(wrapper), "CARGO_PROFILE_DEV_DEBUG": "0"}
    told = subprocess.run(["cargo", command, "--locked", "--message-format=json", *arguments], cwd=tree,
                          env=env, stdout=subprocess.PIPE, text=True)
    return [json.loads(line) for line in told.stdout.splitlines()]


def main():
    mutants = json.loads(pathlib.Path(sys.argv[1]).read_text())
    tree = pathlib.Path(sys.argv[2]).resolve()
    names = {m["file"] for m in mutants} | {ROOT}
    # Compiled with fewer optimisations: the switches are many.
    manifest = tree / "Cargo.toml"
    manifest.write_text(re.sub(r"^(cupwright|formulas) = \{ opt-level = 2", r"\1 = { opt-level = 1",
                               manifest.read_text(), flags=re.M))
    originals = {name: (tree / name).read_text() for name in names}
    left_out = set()
    while True:
        no_way = write(tree, originals, mutants, left_out)
        more = blamed(tree, mutants)
        if not more:
            break
        if more <= left_out:
            sys.exit("the compiler takes it no better")
        left_out |= more
    binaries = []
    for arguments in (("--lib", "--package", "cupwright", "--all-features"),
                      ("--test", "core", "--package", "cupwright-workspace")):
        told = cargo(tree, "test", "--no-run", *arguments)
        binaries += [m["executable"] for m in told if m.get("executable") and m["profile"]["test"]]
    if len(binaries) != 2:
        sys.exit(f"built {binaries}")
    # What does not compile in its own function's place or without its own sign compiles nowhere.
    sure = {n for n in left_out if mutants[n]["genre"] in ("FnValue", "UnaryOperator")}
    facts = {"binaries": binaries, "unviable": sorted(sure), "unswitched": sorted(no_way | left_out - sure)}
    (tree.parent / "build.json").write_text(json.dumps(facts))
    print(f"{len(mutants)} mutants: {len(sure)} do not compile, {len(facts['unswitched'])} have no switch")


main()
