//! Writes each table of `tables/*.yaml` as JSON, which is read some ten times as fast. The YAML stays the one source, and the
//! digest of all of it in the order of their names is that which `--version` tells.
//!
//! And each page of `src/guide` with its figures inside, since the docs of a crate hold no files beside them.

use sha2::{Digest as _, Sha256};
use std::error::Error;
use std::fmt::Write as _;
use std::path::PathBuf;
use std::{env, fs, io};

fn main() -> Result<(), Box<dyn Error>> {
    println!("cargo::rerun-if-changed=tables");
    let made = PathBuf::from(env::var_os("OUT_DIR").ok_or("cargo names no folder to write to")?);
    let mut paths = fs::read_dir("tables")?.map(|entry| Ok(entry?.path())).collect::<io::Result<Vec<_>>>()?;
    paths.sort();
    let mut digest = Sha256::new();
    for path in paths {
        let told = |error| format!("{}: {error}", path.display());
        let text = fs::read_to_string(&path)?;
        digest.update(&text);
        let table: serde_yaml::Value = serde_yaml::from_str(&text).map_err(told)?;
        let file = path.with_extension("json");
        fs::write(made.join(file.file_name().ok_or("a table without a name")?), serde_json::to_string(&table)?)?;
    }
    let digest: String = digest.finalize().iter().map(|byte| format!("{byte:02x}")).collect();
    println!("cargo::rustc-env=JACKPULL_TABLES={digest}");
    println!("cargo::rerun-if-changed=src/guide");
    for entry in fs::read_dir("src/guide")?.collect::<io::Result<Vec<_>>>()? {
        if entry.path().extension().is_some_and(|ending| ending == "md") {
            fs::write(made.join(entry.file_name()), with_figures(&fs::read_to_string(entry.path())?)?)?;
        }
    }
    Ok(())
}

/// A page with each `](figures/NAME.svg)` as the drawing itself.
fn with_figures(page: &str) -> Result<String, Box<dyn Error>> {
    const OPENING: &str = "](figures/";
    let mut parts = page.split(OPENING);
    let mut whole = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        let (name, rest) = part.split_once(')').ok_or("a figure without an end")?;
        whole += "](data:image/svg+xml,";
        for byte in fs::read(format!("src/guide/figures/{name}"))? {
            let plain = byte.is_ascii_alphanumeric() || b"-._~".contains(&byte);
            if plain { whole.push(char::from(byte)) } else { write!(whole, "%{byte:02X}")? }
        }
        whole += ")";
        whole += rest;
    }
    Ok(whole)
}
