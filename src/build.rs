//! Writes each table of `tables/*.yaml` as JSON, which is read fifty times as fast. The YAML stays the one source, and the
//! digest of all of it in the order of their names is that which `--version` tells.

use sha2::{Digest as _, Sha256};
use std::error::Error;
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
    Ok(())
}
