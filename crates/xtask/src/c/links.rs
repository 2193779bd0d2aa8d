//! Links with firmware that has its own `exp`, `memset` and double arithmetic: nobody takes the other's.
//!
//! The firmware of `tests/links` is linked without the library, and with it in every order. Whatever it
//! defines without must come from the same file with it, it must answer the same, and the library must
//! answer the same bits everywhere. A plain Rust static library in its place fails both.

use std::collections::{BTreeMap, BTreeSet};
use std::path::PathBuf;

use super::archive::{HOST, Target, bare, check_globals, object, staticlib};
use super::driver::{BOARDS, Board};
use crate::commands::{limited, output, program, quietly, text_of};
use crate::toolchain::Toolchain;
use crate::{Outcome, root, tools};

/// Longest run of an image, in seconds.
const LIMIT: u32 = 60;

/// Where the library stands among those that the firmware links anyway.
const OURS: &str = "cupwright";

/// The firmware's own exp and memset, in a library.
const OWN: &str = "own";

/// The workspace of the other Rust libraries.
const OTHERS: &str = "tests/links/Cargo.toml";

/// Orders of a link.
const ORDERS: [(&str, &[&str]); 5] = [
    ("first", &[OURS, OWN, "-lm", "-lc", "-lgcc"]),
    ("second", &[OWN, OURS, "-lm", "-lc", "-lgcc"]),
    ("between", &[OWN, "-lm", OURS, "-lc", "-lgcc"]),
    ("last", &[OWN, "-lm", "-lc", "-lgcc", OURS]),
    ("group", &["-Wl,--start-group", "-lgcc", OWN, "-lm", "-lc", OURS, "-Wl,--end-group"]),
];
const FIRST: &[&str] = ORDERS[0].1;
const LAST: &[&str] = ORDERS[3].1;

const M0: &str = "thumbv6m-none-eabi";
/// The one whose libgcc rounds some sums otherwise than Rust's routines do.
const M4F: &str = "thumbv7em-none-eabihf";

/// What a plain Rust static library takes from the firmware.
const TAKEN: [&str; 4] = ["exp", "memset", "__aeabi_dadd", "__aeabi_dmul"];

/// One call each, as `firmware.c` prints it.
const ONE_CALL_EACH: &str = "0000000100000001";

/// Links in every order on this computer and on boards, then plain and with other libraries.
pub fn check() -> Outcome {
    tools::debian(&[
        "gcc",
        "gcc-arm-none-eabi",
        "libnewlib-arm-none-eabi",
        "qemu-system-arm",
        "binutils",
    ])?;
    let toolchain = Toolchain::install(&[M4F])?;
    let brews = Place::new(HOST.triple)?.in_every_order(None)?;
    Place::new(M0)?.in_every_order(Some(&brews))?;
    let board = Place::new(M4F)?;
    board.in_every_order(Some(&brews))?;
    board.plain_takes(toolchain, &brews)?;
    board.what_can_panic_is_seen(toolchain)?;
    board.beside_others(toolchain, &brews)
}

/// A computer or board with the firmware's parts compiled for it.
struct Place {
    target: &'static Target,
    board: Option<&'static Board>,
    folder: PathBuf,
}

/// A firmware that was linked and ran.
struct Linked {
    /// The file of each global symbol.
    symbols: BTreeMap<String, String>,
    answers: Answers,
}

/// What the firmware prints.
#[derive(Debug, PartialEq)]
struct Answers {
    /// A hash of what it computes for itself.
    own: String,
    /// Calls of its exp and its memset for that.
    calls: String,
    /// A hash of the library's answers.
    brews: String,
    /// The calls again, when the library has worked.
    calls_after: String,
}

impl Place {
    /// Compiles the parts.
    fn new(triple: &str) -> Outcome<Self> {
        let board = BOARDS.iter().find(|board| board.triple == triple);
        let target = if board.is_some() { bare(triple) } else { &HOST };
        let folder = root().join("target/links").join(triple);
        std::fs::create_dir_all(&folder)
            .map_err(|error| format!("{}: {error}", folder.display()))?;
        let place = Self { target, board, folder };
        for part in [
            "firmware",
            "brews",
            "no_brews",
            "others",
            "alone",
            place.start(),
            "own_exp",
            "own_memset",
        ] {
            quietly(
                target
                    .tool("gcc")
                    .args(target.compiler)
                    // Each call of exp and memset as it is written.
                    .args(["-std=c11", "-Os", "-fno-builtin", "-ffunction-sections"])
                    .args(["-Wall", "-Wextra", "-Wpedantic", "-Werror"])
                    .arg(format!("-I{}", target.package().join("include").display()))
                    .args(["-c", &place.source(part), "-o"])
                    .arg(place.object(part)),
            )?;
        }
        let own = [place.object("own_exp"), place.object("own_memset")];
        quietly(target.tool("ar").arg("rcsD").arg(place.archive(OWN)).args(own))?;
        Ok(place)
    }

    /// The part that starts the others.
    fn start(&self) -> &'static str {
        if self.board.is_some() { "board" } else { "host" }
    }

    /// A part's source: a board starts like those of the driver.
    fn source(&self, part: &str) -> String {
        let folder = if part == "board" { "c" } else { "links" };
        format!("tests/{folder}/{part}.c")
    }

    fn object(&self, part: &str) -> PathBuf {
        self.folder.join(part).with_extension("o")
    }

    fn archive(&self, name: &str) -> PathBuf {
        self.folder.join(format!("lib{name}.a"))
    }

    fn library(&self) -> PathBuf {
        self.target.package().join("lib/libcupwright.a")
    }

    /// Links parts and libraries in an order and runs them.
    fn linked(&self, parts: &[&str], order: &[&str], ours: &[PathBuf]) -> Outcome<Linked> {
        let (image, map) = (self.folder.join("image"), self.folder.join("map"));
        let mut link = self.target.tool("gcc");
        link.args(self.target.compiler).args(["-Wl,--gc-sections", "-Wl,-z,noexecstack"]);
        if let Some(board) = self.board {
            link.args(["-nostdlib", "-Wl,--no-warn-rwx-segments", "-T", "tests/c/board.ld"]);
            link.args(board.memory.map(|memory| format!("-Wl,--defsym={memory}")));
        }
        link.args(parts.iter().map(|part| self.object(part)));
        link.args(["firmware", self.start()].map(|part| self.object(part)));
        for library in order {
            match *library {
                OURS => link.args(ours),
                OWN => link.arg(self.archive(OWN)),
                other => link.arg(other),
            };
        }
        quietly(link.arg(format!("-Wl,-Map={}", map.display())).arg("-o").arg(&image))?;
        let text = text_of(&map)?;
        let run = self.board.map_or_else(|| program(&image), |board| board.emulate(&image));
        let printed = output(&mut limited(LIMIT, &run))?;
        let answers = Answers::read(&printed).ok_or_else(|| format!("printed {printed:?}"))?;
        Ok(Linked { symbols: symbols(&text), answers })
    }

    /// The firmware without the library.
    fn without(&self) -> Outcome<Linked> {
        let alone = self.linked(&["no_brews", "alone"], FIRST, &[])?;
        if alone.answers.calls != ONE_CALL_EACH {
            return Err(format!("alone, the firmware says {:?}", alone.answers));
        }
        Ok(alone)
    }

    /// The hash of the library's answers: the known one, or else what the first order gives.
    fn in_every_order(&self, known: Option<&str>) -> Outcome<String> {
        let without = self.without()?;
        for name in self.firmwares() {
            if !without.symbols.contains_key(*name) {
                return Err(format!("the map does not say where {name} comes from"));
            }
        }
        let mut brews = known.map(str::to_string);
        for (name, order) in ORDERS {
            let with = self.linked(&["brews", "alone"], order, &[self.library()])?;
            let fail = |words: String| Err(format!("{}, {name}: {words}", self.target.triple));
            let taken = taken(&without.symbols, &with.symbols);
            if !taken.is_empty() {
                return fail(format!("not the firmware's own any more: {}", taken.join(", ")));
            }
            let brews = brews.get_or_insert_with(|| with.answers.brews.clone());
            let right = Answers {
                own: without.answers.own.clone(),
                calls: ONE_CALL_EACH.to_string(),
                brews: brews.clone(),
                calls_after: ONE_CALL_EACH.to_string(),
            };
            if with.answers != right {
                return fail(format!("{:?} instead of {right:?}", with.answers));
            }
        }
        let brews = brews.ok_or("no orders")?;
        println!("{}: {} orders, nothing taken: {brews}", self.target.triple, ORDERS.len());
        Ok(brews)
    }

    /// What the firmware has to lose: this computer needs no soft-float.
    fn firmwares(&self) -> &'static [&'static str] {
        if self.board.is_some() { &TAKEN } else { &TAKEN[..2] }
    }

    /// Both checks see a difference: a plain Rust static library takes what is the firmware's when it
    /// comes first, and has its own arithmetic taken when it comes last.
    fn plain_takes(&self, toolchain: Toolchain, brews: &str) -> Outcome {
        let plain = [staticlib(self.target, toolchain, "Cargo.toml", "cupwright-library")?];
        let without = self.without()?;
        let first = self.linked(&["brews", "alone"], FIRST, &plain)?;
        let taken = taken(&without.symbols, &first.symbols);
        for name in TAKEN {
            if !taken.iter().any(|words| words.starts_with(&format!("{name} "))) {
                return Err(format!("plain and first, Rust's library does not take {name}"));
            }
        }
        if first.answers.calls == ONE_CALL_EACH || first.answers.own == without.answers.own {
            return Err(format!("plain and first, nothing changes: {:?}", first.answers));
        }
        let last = self.linked(&["brews", "alone"], LAST, &plain)?.answers.brews;
        if last == brews {
            return Err("plain and last, the answers are the same: has libgcc changed?".to_string());
        }
        println!("plain and first, it takes {} symbols; last, its answers are {last}", taken.len());
        Ok(())
    }

    /// A library that can panic is refused.
    fn what_can_panic_is_seen(&self, toolchain: Toolchain) -> Outcome {
        match self.prepared(toolchain, "indexes", "indexes_nth") {
            Err(words) if words.ends_with("indexes_can_panic is undefined") => {
                println!("{words}, as it must be");
                Ok(())
            }
            other => Err(format!("a library that indexes is not refused: {other:?}")),
        }
    }

    /// Three Rust libraries in one image: ours, one prepared as ours is, and a plain one.
    fn beside_others(&self, toolchain: Toolchain, brews: &str) -> Outcome {
        let neighbour = self.prepared(toolchain, "neighbour", "neighbour_mean")?;
        let ordinary = staticlib(self.target, toolchain, OTHERS, "ordinary")?;
        let mut libraries = [self.library(), neighbour, ordinary];
        for order in [LAST, FIRST] {
            let found = self.linked(&["brews", "others"], order, &libraries)?.answers.brews;
            if found != brews {
                return Err(format!("beside others the answers are {found}, not {brews}"));
            }
            libraries.reverse();
        }
        println!("beside two other Rust libraries, in two orders, the same answers");
        Ok(())
    }

    /// The archive of another library with one function, prepared and checked as ours is.
    fn prepared(&self, toolchain: Toolchain, name: &str, function: &str) -> Outcome<PathBuf> {
        let functions = BTreeSet::from([function.to_string()]);
        let plain = staticlib(self.target, toolchain, OTHERS, name)?;
        check_globals(&object(self.target, &plain, name, &functions, &self.folder)?, &functions)?;
        Ok(self.archive(name))
    }
}

impl Answers {
    fn read(printed: &str) -> Option<Self> {
        let mut lines = printed.lines();
        let mut next = |name| Some(lines.next()?.strip_prefix(name)?.to_string());
        let answers = Self {
            own: next("own ")?,
            calls: next("calls ")?,
            brews: next("brews ")?,
            calls_after: next("calls ")?,
        };
        lines.next().is_none().then_some(answers)
    }
}

/// The file that each global symbol of an image comes from, by the linker's map: lines of sections end
/// with a file, and lines of their symbols follow.
fn symbols(map: &str) -> BTreeMap<String, String> {
    let mut symbols = BTreeMap::new();
    let mut file = "";
    let layout = map.split_once("Linker script and memory map").map_or("", |(_, layout)| layout);
    for line in layout.lines() {
        let words: Vec<&str> = line.split_whitespace().collect();
        match words[..] {
            [.., address, size, path] if address.starts_with("0x") && size.starts_with("0x") => {
                let path = path.split('(').next().unwrap_or(path);
                file = path.rsplit('/').next().unwrap_or(path);
            }
            [address, name] if address.starts_with("0x") && !name.starts_with("0x") => {
                symbols.insert(name.to_string(), file.to_string());
            }
            _ => {}
        }
    }
    symbols
}

/// Symbols of a firmware that come from another file than they did.
fn taken(before: &BTreeMap<String, String>, after: &BTreeMap<String, String>) -> Vec<String> {
    let moved = |(name, file): (&String, &String)| {
        let now = after.get(name).map_or("nowhere", String::as_str);
        (now != file && name != "brews").then(|| format!("{name} from {now}"))
    };
    before.iter().filter_map(moved).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const MAP: &str = "
Discarded input sections

 .text.unused   0x0000000000000000        0x8 /a/firmware.o
                0x0000000000000000                unused

Linker script and memory map

LOAD /a/firmware.o
                0x0000000020400000                RAM_END = 0x20400000
 .text          0x0000000000000040       0x54 /a/libgcc.a(_arm_addsubdf3.o)
                0x0000000000000048                __aeabi_dsub
                0x000000000000004c                __aeabi_dadd
 .text.a_very_long_name_of_a_function
                0x0000000000000094       0x20 /a/firmware.o
                0x0000000000000094                main
";

    fn known() -> BTreeMap<String, String> {
        [("__aeabi_dadd", "libgcc.a"), ("__aeabi_dsub", "libgcc.a"), ("main", "firmware.o")]
            .map(|(name, file)| (name.to_string(), file.to_string()))
            .into()
    }

    #[test]
    fn files_of_symbols_are_read_from_a_map() {
        assert_eq!(symbols(MAP), known());
        assert!(symbols("no map").is_empty());
    }

    #[test]
    fn what_comes_from_elsewhere_is_taken() {
        let mut now = known();
        now.insert("cupwright_extraction_yield".into(), "libcupwright.a".into());
        assert_eq!(taken(&known(), &now), [""; 0]);
        now.insert("__aeabi_dadd".into(), "libcupwright_library.a".into());
        now.remove("__aeabi_dsub");
        assert_eq!(
            taken(&known(), &now),
            ["__aeabi_dadd from libcupwright_library.a", "__aeabi_dsub from nowhere"]
        );
    }

    #[test]
    fn answers_are_read_as_printed() {
        let answers = Answers::read("own 1\ncalls 2\nbrews 3\ncalls 4\n").unwrap();
        assert_eq!([&answers.own, &answers.brews], ["1", "3"]);
        assert_eq!([&answers.calls, &answers.calls_after], ["2", "4"]);
        for other in ["", "own 1\ncalls 2\n", "own 1\ncalls 2\nbrews 3\ncalls 4\nfault\n"] {
            assert_eq!(Answers::read(other), None);
        }
    }

    #[test]
    fn every_order_has_everything_once() {
        let sorted = |order: &[&'static str]| {
            let mut names: Vec<&str> =
                order.iter().copied().filter(|name| !name.starts_with("-Wl")).collect();
            names.sort_unstable();
            names
        };
        let orders: BTreeSet<_> = ORDERS.iter().map(|(_, order)| order).collect();
        assert_eq!(orders.len(), ORDERS.len());
        for (name, order) in ORDERS {
            assert_eq!(sorted(order), sorted(FIRST), "{name}");
        }
    }
}
