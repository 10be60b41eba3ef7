//! The example programs run.

#[path = "../../examples/built_in_code.rs"]
mod built_in_code;

#[test]
fn a_drive_is_built_in_code() {
    built_in_code::main().unwrap();
}

#[path = "../../examples/jobs.rs"]
mod jobs;

#[test]
fn the_table_of_jobs_is_printed() {
    jobs::main().unwrap();
}
