//! The example programs run.

#[path = "../../examples/built_in_code.rs"]
mod built_in_code;

#[test]
fn a_drive_is_built_in_code() {
    built_in_code::main().unwrap();
}
