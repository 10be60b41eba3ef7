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

#[path = "../../examples/published_limits/main.rs"]
#[allow(dead_code, reason = "the test calls what `main` calls")]
mod published_limits;

#[test]
fn the_published_limits_are_printed_as_text_and_as_a_table() {
    for (is_markdown, line) in [(false, "\nWorked pulls\n"), (true, "\n## Worked pulls\n")] {
        let mut printed = Vec::new();
        assert!(published_limits::print(&mut printed, is_markdown).unwrap(), "a figure is outside its tolerance");
        let printed = String::from_utf8(printed).unwrap();
        assert!(printed.contains(line), "{printed}");
        assert!(printed.contains(" figures: 0 outside their tolerance; "), "{printed}");
    }
}
